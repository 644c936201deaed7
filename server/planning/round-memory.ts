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
  ) => (question: unknown, make: () => Answer) => Answer;
}

/**
 * A memory that holds the answers of one round, the last, and no others. Questions and what they share are plain data and
 * compared by their JSON. It saves work and changes no answer.
 */
export function roundMemory<Answer>(): RoundMemory<Answer> {
  let sharedBefore = '';
  let sameBefore: readonly unknown[] = [];
  let before: ReadonlyMap<string, Answer> = new Map();

  return {
    begin(shared, same) {
      const sharedNow = JSON.stringify(shared);
      const stands =
        sharedNow === sharedBefore &&
        same.length === sameBefore.length &&
        same.every((one, at) => one === sameBefore[at]);
      const known = stands ? before : new Map<string, Answer>();
      const kept = new Map<string, Answer>();
      sharedBefore = sharedNow;
      sameBefore = same;
      before = kept;
      return (question, make) => {
        const key = JSON.stringify(question);
        const answer = known.get(key) ?? make();
        kept.set(key, answer);
        return answer;
      };
    },
  };
}
