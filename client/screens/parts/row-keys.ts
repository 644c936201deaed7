/**
 * A row's key is its id, except for rows typed in this window: those keep the key they had before the server gave
 * them an id, so that an editor open in such a row is not torn down when the answer comes.
 */
export interface RowKeys {
  newKey(): string;
  keyOf(id: string): string;
  /** Null for a key whose row the server has not taken yet. */
  idOf(key: string): string | null;
  isOwn(key: string): boolean;
  pair(key: string, id: string): void;
}

const OWN_PREFIX = 'new-';

export function rowKeys(): RowKeys {
  const keyById = new Map<string, string>();
  const idByKey = new Map<string, string>();
  let count = 0;
  const isOwn = (key: string): boolean => key.startsWith(OWN_PREFIX);
  return {
    newKey: () => {
      count += 1;
      return `${OWN_PREFIX}${count}`;
    },
    keyOf: (id) => keyById.get(id) ?? id,
    idOf: (key) => idByKey.get(key) ?? (isOwn(key) ? null : key),
    isOwn,
    pair: (key, id) => {
      keyById.set(id, key);
      idByKey.set(key, id);
    },
  };
}
