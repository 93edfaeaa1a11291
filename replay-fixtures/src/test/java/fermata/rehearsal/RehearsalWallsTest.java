package fermata.rehearsal;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

@AnalyzeClasses(packages = "fermata.rehearsal", importOptions = ImportOption.DoNotIncludeTests.class)
class RehearsalWallsTest {
    /** Who tells the truth must not know how it is guessed. */
    @ArchTest
    static final ArchRule shouldKnowOnlyTheDecoderWhenRehearsing = classes()
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage("fermata.rehearsal..", "fermata.decoder..", "java.lang..", "java.util..");
}
