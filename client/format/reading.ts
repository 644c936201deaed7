/** What a typed text came to, or one sentence that says what would be understood. */
export type Reading<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly message: string };

export function understood<Value>(value: Value): Reading<Value> {
  return { ok: true, value };
}

export function refused(message: string): { readonly ok: false; readonly message: string } {
  return { ok: false, message };
}
