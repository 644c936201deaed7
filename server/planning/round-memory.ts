/** Answers of the last round, by the question they answer, for as long as what all questions share is the same. */
export interface RoundMemory<Answer> {
  /**
   * Begins a round. `shared`: what all questions of the round hang on; `same`: objects they hang on too, which are equal
   * only to themselves. Result: answers a question as in the round before where it and all that is shared are as they
   * were, the very object, else by `make`.
   */
  readonly begin: (
    shared: unknown,
    same: readonly unknown[],
  ) => (question: object, make: () => Answer) => Answer;
}

interface Kept<Answer> {
  readonly key: string;
  readonly answer: Answer;
}

/**
 * A memory that holds the answers of one round, the last, and no others. Questions and what they share are plain data
 * that nobody changes. A question that is the very object of before is known at once, any other by its JSON. It saves
 * work and changes no answer.
 */
export function roundMemory<Answer>(): RoundMemory<Answer> {
  let sharedBefore = '';
  let sameBefore: readonly unknown[] = [];
  let before: ReadonlyMap<string, Kept<Answer>> = new Map();
  let byObject = new WeakMap<object, Kept<Answer>>();

  return {
    begin(shared, same) {
      const sharedNow = JSON.stringify(shared);
      const stands =
        sharedNow === sharedBefore &&
        same.length === sameBefore.length &&
        same.every((one, at) => one === sameBefore[at]);
      const known = stands ? before : new Map<string, Kept<Answer>>();
      const kept = new Map<string, Kept<Answer>>();
      if (!stands) byObject = new WeakMap();
      sharedBefore = sharedNow;
      sameBefore = same;
      before = kept;
      return (question, make) => {
        const found = byObject.get(question) ?? knownOrMade(known, JSON.stringify(question), make);
        byObject.set(question, found);
        kept.set(found.key, found);
        return found.answer;
      };
    },
  };
}

function knownOrMade<Answer>(
  known: ReadonlyMap<string, Kept<Answer>>,
  key: string,
  make: () => Answer,
): Kept<Answer> {
  return known.get(key) ?? { key, answer: make() };
}
