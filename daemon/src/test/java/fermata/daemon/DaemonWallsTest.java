package fermata.daemon;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toSet;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.util.Map;
import java.util.Set;

@AnalyzeClasses(packages = "fermata", importOptions = ImportOption.DoNotIncludeTests.class)
class DaemonWallsTest {
    private static final String[] ONE_OF_EACH_MODULE = {"CubeState", "PracticeAnalysis", "Practice", "VirtualCuber"};

    @ArchTest
    static final ArchRule shouldBeUsedByNobodyElse = noClasses()
            .that()
            .resideOutsideOfPackage("fermata.daemon..")
            .and()
            .resideInAPackage("fermata..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("fermata.daemon..");

    @ArchTest
    static final ArchRule shouldReadTheMachinesClocksInOnePackageOnly = noClasses()
            .that()
            .resideOutsideOfPackage("fermata.daemon.time..")
            .should()
            .accessTargetWhere(describe("the target reads a clock of the machine", DaemonWallsTest::readsTheMachine));

    /** The terminal is where a command gets the civil clock that it hands on. */
    @ArchTest
    static final ArchRule shouldTakeTheCivilClockFromTheTerminal = noClasses()
            .that()
            .doNotHaveFullyQualifiedName("fermata.daemon.cli.asked.Terminal")
            .should()
            .accessTargetWhere(describe(
                    "the target makes a clock of the machine",
                    access -> access.getTargetOwner().isEquivalentTo(Clock.class)
                            && access.getTarget().getName().matches("system.*|tick(Millis|Seconds|Minutes)")));

    /** By the machine's language 1 may be written otherwise, also in the name of a file. */
    @ArchTest
    static final ArchRule shouldSayInWhichLanguageItWritesNumbers = noClasses()
            .that()
            .resideInAPackage("fermata..")
            .should()
            .callMethod(String.class, "format", String.class, Object[].class)
            .orShould()
            .callMethod(String.class, "formatted", Object[].class);

    /** A whole number that is rounded goes through 24 bits on the way. */
    @ArchTest
    static final ArchRule shouldNotRoundWhatIsWhole =
            noClasses().that().resideInAPackage("fermata..").should().callMethod(Math.class, "round", float.class);

    @ArchTest
    static final ArchRule shouldKnowTheHttpLibraryWhereThePagesAreServedOnly = noClasses()
            .that()
            .resideOutsideOfPackages("fermata.daemon.http..", "fermata.daemon.web..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("io.undertow..", "org.xnio..");

    /** Over all modules: who reads one package need not read another first that needs the one. */
    @ArchTest
    static final ArchRule shouldHaveNoRingOfPackages =
            slices().matching("fermata.(**)").should().beFreeOfCycles();

    /** Over all modules: whoever searches the house for a name finds one type. Types within types are not counted. */
    @ArchTest
    static void shouldGiveEachTopLevelTypeANameOfItsOwn(JavaClasses house) {
        Map<String, Set<String>> bySimpleName = house.stream()
                .filter(type -> type.isTopLevelClass() && !type.getSimpleName().equals("package-info"))
                .collect(groupingBy(JavaClass::getSimpleName, mapping(JavaClass::getName, toSet())));
        assertThat(bySimpleName).as("a type of each module").containsKeys(ONE_OF_EACH_MODULE);
        assertThat(bySimpleName.values()).filteredOn(types -> types.size() > 1).isEmpty();
    }

    /** Calls and method references alike; {@code now(clock)} reads a clock that was handed in. */
    private static boolean readsTheMachine(JavaAccess<?> access) {
        String owner = access.getTargetOwner().getName();
        String name = access.getTarget().getName();
        return switch (owner) {
            case "java.lang.System" -> name.equals("nanoTime") || name.equals("currentTimeMillis");
            case "java.util.Date" -> name.equals("<init>");
            default ->
                owner.startsWith("java.time.")
                        && name.equals("now")
                        && !access.getTarget().getFullName().contains(Clock.class.getName());
        };
    }
}
