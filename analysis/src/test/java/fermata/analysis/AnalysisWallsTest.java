package fermata.analysis;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.Instant;
import java.util.SplittableRandom;

@AnalyzeClasses(packages = "fermata.analysis", importOptions = ImportOption.DoNotIncludeTests.class)
class AnalysisWallsTest {
    @ArchTest
    static final ArchRule shouldKnowNothingOfTheDaemonWhenAnalysing = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "fermata.daemon..", "fermata.rehearsal..", "tools.jackson..", "org.slf4j..", "java.util.logging..");

    /** A bundled table may be read, so streams and readers are allowed; files are not. */
    @ArchTest
    static final ArchRule shouldReachNoFileNetworkOrDatabaseWhenAnalysing = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.nio.file..", "java.sql..", "javax.sql..", "java.net..")
            .orShould()
            .dependOnClassesThat()
            .haveNameMatching("java\\.io\\.(File.*|RandomAccessFile|PrintStream|Console)");

    @ArchTest
    static final ArchRule shouldStartNoThreadWhenAnalysing = noClasses()
            .should()
            .dependOnClassesThat()
            .resideInAPackage("java.util.concurrent..")
            .orShould()
            .dependOnClassesThat()
            .areAssignableTo(Thread.class);

    @ArchTest
    static final ArchRule shouldAskNoClockAndNoHiddenChanceWhenAnalysing = noClasses()
            .should()
            .callMethod(System.class, "nanoTime")
            .orShould()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(Instant.class, "now")
            .orShould()
            .callMethod(Math.class, "random")
            .orShould()
            .callConstructor(SplittableRandom.class)
            .orShould()
            .dependOnClassesThat()
            .areAssignableTo(Clock.class);
}
