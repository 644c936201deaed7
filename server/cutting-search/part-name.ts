interface NamedPart {
  readonly id: string;
  readonly name: string;
  readonly section: string;
}

/** A part as a sentence names it: with its section where others bear its name, and with its row where that is no help. */
export function partName(parts: readonly NamedPart[], id: string): string {
  const at = parts.findIndex((part) => part.id === id);
  const part = parts[at];
  if (part === undefined) return `part ${id}`;
  const [name, section] = [part.name.trim(), part.section.trim()];
  if (name === '') return `part in row ${at + 1}`;
  const namesakes = parts.filter((other) => other.name.trim() === name);
  if (namesakes.length === 1) return name;
  const alone = namesakes.filter((other) => other.section.trim() === section).length === 1;
  return alone && section !== '' ? `${name}, ${section}` : `${name}, row ${at + 1}`;
}
