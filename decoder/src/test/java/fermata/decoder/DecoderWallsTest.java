package fermata.decoder;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;

@AnalyzeClasses(packages = "fermata.decoder", importOptions = ImportOption.DoNotIncludeTests.class)
class DecoderWallsTest {
    private static final Set<String> HIDDEN = Set.of(
            "java.lang.System.nanoTime",
            "java.lang.System.currentTimeMillis",
            "java.lang.Math.random",
            "java.util.random.RandomGenerator.getDefault",
            "java.util.random.RandomGenerator.of");

    /** Of the JDK only what computes: no clock, no thread pool, no network, no database and no log is among these. */
    @ArchTest
    static final ArchRule shouldKnowOnlyTheJdkAndJacksonWhenDecoding = classes()
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "fermata.decoder..",
                    "tools.jackson..",
                    "java.lang",
                    "java.lang.invoke",
                    "java.lang.runtime",
                    "java.math",
                    "java.util",
                    "java.util.function",
                    "java.util.random",
                    "java.util.regex",
                    "java.util.stream",
                    "java.io",
                    "java.nio",
                    "java.nio.charset");

    /** The bundled profile is read from the class path, so streams and readers are allowed; files are not. */
    @ArchTest
    static final ArchRule shouldReachNoFileConsoleOrProcessWhenDecoding = noClasses()
            .should()
            .dependOnClassesThat()
            .haveNameMatching("java\\.io\\.(File.*|RandomAccessFile|PrintStream|PrintWriter|Console)")
            .orShould()
            .dependOnClassesThat()
            .haveNameMatching("java\\.lang\\.(Process.*|Runtime|Thread.*)");

    @ArchTest
    static final ArchRule shouldAskNoClockAndNoHiddenChanceWhenDecoding = noClasses()
            .should()
            .accessTargetWhere(describe("the target is a clock or hidden chance", DecoderWallsTest::isHidden))
            .orShould()
            .callConstructor(SplittableRandom.class)
            .orShould()
            .dependOnClassesThat()
            .areAssignableTo(Random.class);

    /** Calls and method references alike. */
    private static boolean isHidden(JavaAccess<?> access) {
        return HIDDEN.contains(
                access.getTargetOwner().getName() + "." + access.getTarget().getName());
    }
}
