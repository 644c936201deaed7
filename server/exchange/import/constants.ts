/** Largest pasted or uploaded list, bytes of UTF-8: some 40,000 lines of fifty characters. */
export const LARGEST_TEXT_BYTES = 2_000_000;
/** Largest workbook, bytes; in base64 it still fits into a request. */
export const LARGEST_WORKBOOK_BYTES = 5_000_000;
/** Most a workbook may unpack to, bytes: 20,000 rows of fifty cells are about half of it. */
export const LARGEST_UNPACKED_BYTES = 80_000_000;
/** Most parts one import takes: as many as one request of changes holds. */
export const MOST_ROWS = 20_000;
/** Most columns of a list; more come from a wrong separator, not from a list. */
export const MOST_COLUMNS = 200;
/** Rows of the source shown so that the heading row and the columns can be judged. */
export const SAMPLE_ROWS = 12;
