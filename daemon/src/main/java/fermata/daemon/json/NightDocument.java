package fermata.daemon.json;

/**
 * What is kept of a practice day: what lists of days are made of. All else is added up from the accounts when it is
 * asked for, since it depends on the days before.
 */
public record NightDocument(NightsView.Item figures, SolveView.Derived derived) {}
