import { formatsFor } from '../../format/formats.ts';
import type { TypedReading, TypingHelp } from '../../grid/typing-help.ts';
import { type ReadField, readCell } from '../../state/read-cell.ts';
import { getState } from '../../state/store.ts';

/** What is said of a size or a quantity while it is typed: what it comes to, and the named sizes it may use. */
export function partTyping(field: ReadField): TypingHelp {
  return {
    async read(text): Promise<TypedReading | null> {
      const answer = await readCell(field, text);
      if (answer === null) return null;
      return answer.ok
        ? { ok: true, text: answer.display.project, detail: answer.display.exact ?? '' }
        : { ok: false, text: answer.message, detail: answer.wayOut };
    },
    names() {
      const { project } = getState();
      if (project === null) return [];
      const { length } = formatsFor(project.settings);
      return project.plan.sizes.map(({ name, valueMm }) => ({ name, value: length(valueMm) }));
    },
  };
}
