import { html, nothing, type TemplateResult } from 'lit-html';
import type { Problem, Severity } from '../../server/planning/problem.ts';
import { refusalAt } from './faults.ts';
import { type Place, placeElementId } from './place.ts';
import { problemsAt } from './problems-at.ts';

export interface FieldState {
  /** The worst thing said at the field; null when all is well. */
  readonly severity: Severity | null;
  /** For `aria-describedby`; `nothing` when there is no message. */
  readonly messageId: string | typeof nothing;
  readonly message: TemplateResult | typeof nothing;
}

/** What is said at a field: a refusal of what was just typed, else the plan's worst problem there. */
export function fieldState(problems: readonly Problem[], place: Place): FieldState {
  const refusal = refusalAt(place);
  const [worst] = problemsAt(problems, place);
  const said = refusal === null ? worst : { ...refusal, severity: 'error' as const };
  if (said === undefined) return { severity: null, messageId: nothing, message: nothing };
  const messageId = placeElementId(place, 'said');
  return {
    severity: said.severity,
    messageId,
    message: html`<span class="said ${said.severity}" id=${messageId} role=${refusal === null ? nothing : 'alert'}
      >${said.message}${said.wayOut === '' ? nothing : html` <span class="way-out">${said.wayOut}</span>`}</span
    >`,
  };
}
