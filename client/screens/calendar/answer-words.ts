import type { CalendarPlan } from '../../../server/http/contract.ts';
import { trimmedText } from '../../../server/planning/display/fixed-text.ts';
import type { CalendarClock } from '../../format/calendar-clock.ts';

/** The answer of the calendar in one sentence: when the job is ready, how often one has to go, and how sure that is. */
export function answerWords(plan: CalendarPlan, clock: CalendarClock): string {
  switch (plan.state) {
    case 'nothing-to-do':
      return 'Nothing to finish yet';
    case 'does-not-fit':
      return 'No plan fits';
    case 'not-found':
      return 'No plan was found, and none is ruled out';
    case 'planned':
      return [
        plan.readyToAssembleMinute === null
          ? 'Part of the job cannot be planned'
          : `Ready to assemble ${clock.moment(plan.readyToAssembleMinute)}`,
        `${plan.visits} ${plan.visits === 1 ? 'visit' : 'visits'}`,
        plan.proven ? 'proven' : gapWords(plan),
      ].join(' · ');
  }
}

/** What the words above mean, said in full. */
export function proofWords(plan: CalendarPlan, clock: CalendarClock): string {
  if (plan.state !== 'planned') return '';
  if (plan.proven)
    return plan.visitsProven
      ? 'No plan is ready sooner, and none that is ready as soon needs fewer visits.'
      : 'No plan is ready sooner. Fewer visits are not ruled out.';
  if (plan.boundMinute === null) return 'A sooner plan is not ruled out.';
  return `No plan is ready before ${clock.moment(plan.boundMinute)}; whether this one could be sooner is not settled.`;
}

function gapWords({ gap }: CalendarPlan): string {
  return gap === null ? 'not proven' : `at most ${trimmedText(gap * 100, 1)} % from the soonest`;
}
