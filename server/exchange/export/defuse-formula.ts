/**
 * What a spreadsheet takes for the beginning of a formula: equals, plus, minus, at, tab and carriage return.
 * Source: OWASP, "CSV Injection", https://owasp.org/www-community/attacks/CSV_Injection.
 */
const FORMULA_START = /^'*[=+\-@\t\r]/;
const DEFUSED = /^'+[=+\-@\t\r]/;

/**
 * Keeps a text cell of a CSV file from being run as a formula: a single quote goes before it, as the source above
 * says. Only for text; a genuine number may begin with a minus. A text that already begins with quotes and a formula
 * gets one more, so that taking one away always gives the text back.
 *
 * Example: `=1+1` becomes `'=1+1`; `2 pcs` stays.
 */
export function defuseFormula(text: string): string {
  return FORMULA_START.test(text) ? `'${text}` : text;
}

/** The text that was defused: `'=1+1` is `=1+1`. A quote before anything else is part of the text. */
export function withoutDefusing(text: string): string {
  return DEFUSED.test(text) ? text.slice(1) : text;
}
