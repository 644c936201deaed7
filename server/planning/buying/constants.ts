/** Something to be ordered within so many days counts as soon. Rule of ours. */
export const SOON_DAYS = 7;

/** A supplier is asked for a working day within so many days; one who has none in them never works. Rule of ours. */
export const LONGEST_CLOSED_DAYS = 400;

/** Partial choices of suppliers looked at before the search gives up; a project of forty lines needs some hundred. */
export const MOST_CHOICES = 100_000;

/** So many suppliers are weighed against one another; beyond, the search is not proven. 2^12 = 4096 ways to open them. */
export const MOST_SUPPLIERS = 12;

/** A price charged so many times above or below the agreed one is doubted. Rule of ours. */
export const DOUBTFUL_FACTOR = 10;

/** What is ticked off with so many times the reckoned litres is doubted. Rule of ours. */
export const DOUBTFUL_LITRES_FACTOR = 5;
