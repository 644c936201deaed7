import type { Choice } from './grid-column.ts';

/** The choice a typed or pasted text means: its value, its short name or its long name, whatever the case; null when none does. */
export function matchChoice(choices: readonly Choice[], text: string): Choice | null {
  const wanted = fold(text);
  return (
    choices.find((choice) => choice.value === text) ??
    choices.find((choice) => fold(choice.text) === wanted) ??
    choices.find((choice) => choice.detail !== undefined && fold(choice.detail) === wanted) ??
    null
  );
}

/** The choices in which every typed word begins a word; those whose short name begins with the text come first. */
export function filterChoices(choices: readonly Choice[], text: string): readonly Choice[] {
  const words = fold(text).split(' ').filter(Boolean);
  if (words.length === 0) return choices;
  const found = choices.filter((choice) => {
    const haystack = ` ${fold(`${choice.text} ${choice.detail ?? ''}`)}`;
    return words.every((word) => haystack.includes(` ${word}`));
  });
  const starts = (choice: Choice): number => (fold(choice.text).startsWith(fold(text)) ? 0 : 1);
  return found.toSorted((a, b) => starts(a) - starts(b));
}

function fold(text: string): string {
  return text.trim().toLocaleLowerCase().replace(/\s+/g, ' ');
}
