import { describe, expect, it } from 'vitest';
import { roundMemory } from '../../server/planning/round-memory.ts';

/** Asks the questions in one round and tells which had to be answered anew. */
function asker(memory = roundMemory<{ readonly of: string }>()) {
  return (questions: readonly string[], shared: unknown = 1, same: readonly unknown[] = []) => {
    const made: string[] = [];
    const answerOf = memory.begin(shared, same);
    const answers = questions.map((question) =>
      answerOf({ question }, () => {
        made.push(question);
        return { of: question };
      }),
    );
    return { made, answers };
  };
}

describe('a memory of the round before', () => {
  it('answers what was asked before with the very object, and the rest anew', () => {
    const ask = asker();
    const first = ask(['a', 'b']);
    const second = ask(['b', 'c']);
    expect([first.made, second.made]).toEqual([['a', 'b'], ['c']]);
    expect(second.answers[0]).toBe(first.answers[1]);
  });

  it('forgets what the last round did not ask', () => {
    const ask = asker();
    ask(['a']);
    ask(['b']);
    expect(ask(['a']).made).toEqual(['a']);
  });

  it('forgets all when what is shared is another value, or another object', () => {
    const ask = asker();
    const catalogue = { price: 1 };
    ask(['a'], { kerf: 3 }, [catalogue]);
    expect(ask(['a'], { kerf: 3 }, [catalogue]).made).toEqual([]);
    expect(ask(['a'], { kerf: 4 }, [catalogue]).made).toEqual(['a']);
    expect(ask(['a'], { kerf: 4 }, [{ ...catalogue }]).made).toEqual(['a']);
    expect(ask(['a'], { kerf: 4 }, []).made).toEqual(['a']);
  });
});
