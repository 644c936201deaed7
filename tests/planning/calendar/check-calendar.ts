import type {
  CalendarInput,
  CalendarStep,
  CoatFacts,
} from '../../../server/planning/calendar/calendar-input.ts';
import type { CalendarPlan, CalendarTaskPlan } from '../../../server/planning/calendar/calendar-plan.ts';
import {
  CLEAN_UP_MIN,
  DRY_WORK_FIXED_MIN,
  DRY_WORK_M2_PER_MIN,
  SET_UP_MIN,
} from '../../../server/planning/calendar/constants.ts';
import { climateAt } from '../../../server/planning/climate/climate-at.ts';
import { dryingProgress } from '../../../server/planning/climate/drying-progress.ts';
import { mayApply } from '../../../server/planning/climate/may-apply.ts';
import { APPLICATION_RATE_M2_PER_MIN } from '../../../server/planning/finish/constants.ts';

const DAY = 1440;
/** Label minutes and square metres that rounding may cost. */
const DUST = 1e-4;

/**
 * Everything a calendar breaks, in words; empty when it keeps all the rules. Written from the rules alone: it shares the
 * climate functions, the rates and the shapes with the planner, and nothing of its searches.
 */
export function checkCalendar(input: CalendarInput, plan: CalendarPlan): string[] {
  const broken: string[] = [];
  const say = (holds: boolean, text: string): void => {
    if (!holds) broken.push(text);
  };
  if (plan.state !== 'planned') {
    say(plan.tasks.length === 0 && plan.readyToAssembleMinute === null, 'an unplanned calendar has tasks');
    say(plan.state === 'nothing-to-do' || plan.blocks.length > 0, 'nothing is named that is in the way');
    return broken;
  }

  const stepOf = (task: CalendarTaskPlan): CalendarStep => {
    const step = input.recipes
      .find(({ id }) => id === task.recipeId)
      ?.steps.find(({ id }) => id === task.stepId);
    if (step === undefined) throw new Error(`no step for ${task.id}`);
    return step;
  };
  const factsOf = (task: CalendarTaskPlan): CoatFacts | null => stepOf(task).coat;
  const dried = (facts: CoatFacts, from: number, to: number): number =>
    to < from ? -1 : dryingProgress(from, to, input.climate, facts, input.dryingRule);
  const layFrom = (task: CalendarTaskPlan): number => task.layFromMinute ?? task.startMinute;
  const layTo = (task: CalendarTaskPlan): number => task.layToMinute ?? task.endMinute;
  const dryFor = (coat: CalendarTaskPlan, minute: number): number =>
    dried(factsOf(coat) as CoatFacts, layTo(coat), minute);
  const touchMin = ({ touchDryMin, handleDryMin }: CoatFacts): number => touchDryMin ?? handleDryMin ?? 0;
  const isOpen = (task: CalendarTaskPlan): boolean => task.state === 'planned' || task.state === 'pinned';
  const sandTo = (task: CalendarTaskPlan): number => {
    const sands = task.kind === 'sand' || task.kind === 'scuff';
    if (!sands && !task.scuffFirst) return task.startMinute;
    const kind = task.kind === 'sand' ? 'sand' : 'scuff';
    return task.startMinute + DRY_WORK_FIXED_MIN[kind] + task.areaM2 / DRY_WORK_M2_PER_MIN[kind];
  };

  // Vapour: first strokes far enough apart, and no coat larger than the air takes, but for a piece that is so alone.
  const smelly = plan.tasks.filter(({ stepId }) => input.vapour?.mostM2[stepId] !== undefined);
  for (const [index, one] of smelly.entries())
    for (const other of smelly.slice(index + 1))
      say(
        Math.abs(layFrom(one) - layFrom(other)) >= (input.vapour?.apartMin ?? 0) - DUST ||
          (!isOpen(one) && !isOpen(other)),
        `${one.id} and ${other.id} are too near in time for the air`,
      );
  for (const { id, batchId, stepId, areaM2 } of smelly) {
    const pieces = plan.batches.find((batch) => batch.id === batchId)?.pieces ?? [];
    const alone = pieces.reduce((sum, { count }) => sum + count, 0) === 1;
    say(alone || areaM2 <= (input.vapour?.mostM2[stepId] ?? 0) + DUST, `${id} is too large for the air`);
  }

  // Every piece that gets a finish is in exactly as many batches as there are pieces.
  const leftOut = plan.problems.some(({ severity }) => severity === 'error');
  for (const piece of input.pieces) {
    const planned = plan.batches
      .flatMap(({ pieces }) => pieces)
      .filter(({ pieceId }) => pieceId === piece.id);
    const total = planned.reduce((sum, { count }) => sum + count, 0);
    const coated = input.recipes.some(
      ({ id, steps }) =>
        (id === piece.showRecipeId || id === piece.backRecipeId) && steps.some(({ kind }) => kind !== 'cure'),
    );
    if (coated && !leftOut) say(total === piece.count, `${total} of ${piece.count} pieces ${piece.id}`);
  }

  for (const batch of plan.batches) {
    const tasks = plan.tasks.filter(({ batchId }) => batchId === batch.id);
    const inOrder = orderOf(input, batch.pieces[0]?.pieceId ?? '');
    say(
      JSON.stringify(inOrder.steps) ===
        JSON.stringify(tasks.map(({ face, stepId, number }) => [face, stepId, number])),
      `${batch.id} passes its steps in another order`,
    );
    const footprint = sumOf(input, batch, (piece) => Math.max(piece.showM2, piece.backM2));
    say(
      Math.abs(footprint - batch.footprintM2) < DUST,
      `${batch.id} takes ${footprint} m2, not ${batch.footprintM2}`,
    );

    for (const [index, task] of tasks.entries()) {
      const step = stepOf(task);
      const area = sumOf(input, batch, (piece) => {
        if (task.face === 'both') return piece.showM2 + piece.backM2 + piece.edgeM2;
        if (task.face === 'show') return piece.showM2 + piece.edgeM2;
        return piece.backM2 + (input.recipes.some(({ id }) => id === piece.showRecipeId) ? 0 : piece.edgeM2);
      });
      say(Math.abs(area - task.areaM2) < DUST, `${task.id} covers ${task.areaM2} m2, not ${area}`);
      const before = tasks[index - 1];
      if (before !== undefined)
        say(
          task.startMinute >= before.endMinute || !isOpen(task),
          `${task.id} starts before ${before.id} ends`,
        );
      if (!isOpen(task)) continue;

      // Hands-on time, hours, step, material.
      const scuff = task.scuffFirst ? sandTo(task) - task.startMinute : 0;
      const work =
        step.coat === null
          ? DRY_WORK_FIXED_MIN[task.kind as 'sand'] + area / DRY_WORK_M2_PER_MIN[task.kind as 'sand']
          : scuff +
            SET_UP_MIN[step.method] +
            area / APPLICATION_RATE_M2_PER_MIN[step.method] +
            CLEAN_UP_MIN[step.method];
      say(
        task.endMinute - task.startMinute >= work - DUST,
        `${task.id} has ${task.handsOnMin} minutes for ${work}`,
      );
      say(
        task.state === 'pinned' || task.startMinute % input.stepMin === 0,
        `${task.id} starts between two steps`,
      );
      for (let minute = task.startMinute; minute < task.endMinute; minute++)
        if (!isWorkingMinute(input, minute)) {
          say(false, `${task.id} is at work at ${minute}`);
          break;
        }
      say(
        task.startMinute >= Math.max(input.startMinute, step.materialMinute),
        `${task.id} starts too early`,
      );
      for (const { pieceId } of batch.pieces)
        say(
          task.startMinute >= (input.pieces.find(({ id }) => id === pieceId)?.readyMinute ?? 0),
          `${task.id}: pieces not there`,
        );

      // Air while the coat is laid.
      if (step.coat !== null) {
        say(
          layTo(task) - layFrom(task) >= area / APPLICATION_RATE_M2_PER_MIN[step.method] - DUST,
          `${task.id} is laid too fast`,
        );
        say(
          layFrom(task) >= task.startMinute + scuff + SET_UP_MIN[step.method] - DUST,
          `${task.id}: no set-up`,
        );
        say(task.endMinute >= layTo(task) + CLEAN_UP_MIN[step.method] - DUST, `${task.id}: no clean-up`);
        for (let minute = layFrom(task); minute < layTo(task); minute++) {
          const air = climateAt(input.climate, minute);
          const refusals = mayApply(air, air.airC + input.woodWarmerC, step.coat);
          if (refusals.length > 0) {
            say(false, `${task.id} is laid at ${minute} though ${refusals[0]?.reason}`);
            break;
          }
        }
      }

      // Drying and recoat rules against the last coat of the batch.
      const coat = tasks.slice(0, index).findLast((other) => factsOf(other) !== null);
      if (coat === undefined) continue;
      const facts = factsOf(coat) as CoatFacts;
      const between = tasks.slice(tasks.indexOf(coat) + 1, index);
      const coatFollows = tasks
        .slice(index + 1)
        .some((other) => other.face === task.face && factsOf(other) !== null);
      const handleMin = facts.handleDryMin ?? 0;
      if (coat.face !== task.face || (step.coat === null && !coatFollows))
        say(
          dryFor(coat, task.startMinute) >= handleMin - DUST,
          `${task.id} starts before ${coat.id} is dry to handle`,
        );
      else if (step.coat === null) {
        say(
          dryFor(coat, task.startMinute) >= touchMin(facts) - DUST,
          `${task.id} starts before ${coat.id} is touch dry`,
        );
      } else {
        const intervals =
          facts.recoat.length > 0 ? facts.recoat : [{ fromMin: handleMin, toMin: null, scuff: false }];
        const sanding = between.find(({ kind }) => kind === 'sand' || kind === 'scuff');
        const fits = intervals.some(({ fromMin, toMin, scuff: mustScuff }) => {
          const opens = (minute: number): boolean => dryFor(coat, minute) >= fromMin - DUST;
          const stillOpen = toMin === null || dried(facts, layFrom(coat), layFrom(task)) <= toMin + DUST;
          if (!stillOpen || !opens(layFrom(task))) return false;
          if (sanding !== undefined) return !isOpen(sanding) || opens(sanding.startMinute);
          if (!mustScuff) return true;
          return (
            task.scuffFirst &&
            opens(task.startMinute) &&
            dryFor(coat, task.startMinute) >= touchMin(facts) - DUST
          );
        });
        say(fits, `${task.id} falls into no recoat interval of ${coat.id}`);
      }
      if (inOrder.cureBefore.includes(index) && facts.cureMin !== null)
        say(dryFor(coat, task.startMinute) >= facts.cureMin - DUST, `${task.id} does not wait for curing`);
    }

    const last = tasks.at(-1);
    const lastCoat = tasks.findLast((task) => factsOf(task) !== null);
    if (last !== undefined && lastCoat !== undefined) {
      const facts = factsOf(lastCoat) as CoatFacts;
      say(batch.readyToHandleMinute >= last.endMinute, `${batch.id} is ready before its last task`);
      say(
        dryFor(lastCoat, batch.readyToHandleMinute) >= (facts.handleDryMin ?? 0) - DUST,
        `${batch.id} is not dry to handle`,
      );
      if (inOrder.curesAtEnd && facts.cureMin !== null)
        say(
          dryFor(lastCoat, batch.readyToAssembleMinute) >= facts.cureMin - DUST,
          `${batch.id} is not cured`,
        );
      if (batch.curedMinute !== null && facts.cureMin !== null)
        say(
          dryFor(lastCoat, batch.curedMinute) >= facts.cureMin - DUST,
          `${batch.id} is said to be cured too early`,
        );
    }
  }

  // Hands, dust and rack, at every moment at which something begins.
  for (const task of plan.tasks) {
    if (!isOpen(task)) continue;
    const busy = plan.tasks.filter(
      (other) => other.startMinute <= task.startMinute && task.startMinute < other.endMinute,
    );
    say(busy.length <= input.hands, `${busy.length} tasks at ${task.startMinute} for ${input.hands} hands`);
    const coats = plan.tasks.filter((other) => factsOf(other) !== null);
    if (!input.sandsApart && sandTo(task) > task.startMinute)
      for (const coat of coats) {
        if (coat === task || layFrom(coat) >= sandTo(task) - DUST) continue;
        const dry = dryFor(coat, task.startMinute) >= touchMin(factsOf(coat) as CoatFacts) - DUST;
        say(dry, `${task.id} makes dust while ${coat.id} is wet`);
      }
    if (input.rackM2 !== null && factsOf(task) !== null) {
      let taken = 0;
      for (const batch of plan.batches) {
        const laid = coats.findLast((coat) => coat.batchId === batch.id && layFrom(coat) <= layFrom(task));
        if (laid === undefined) continue;
        if (dryFor(laid, layFrom(task)) < (factsOf(laid)?.handleDryMin ?? 0) - DUST)
          taken += batch.footprintM2;
      }
      say(taken <= input.rackM2 + DUST, `${taken} m2 lie on a rack of ${input.rackM2} at ${layFrom(task)}`);
    }
  }

  for (const { taskId, startMinute } of input.pins) {
    const task = plan.tasks.find(({ id }) => id === taskId);
    if (task !== undefined && isOpen(task))
      say(task.startMinute === startMinute, `${taskId} is not where it is pinned`);
  }
  for (const { taskId, startMinute, endMinute } of input.done) {
    const task = plan.tasks.find(({ id }) => id === taskId);
    if (task !== undefined)
      say(
        task.startMinute === startMinute && task.endMinute === endMinute && task.state === 'done',
        `${taskId} was done otherwise`,
      );
  }
  const ready = Math.max(...plan.batches.map((batch) => batch.readyToAssembleMinute));
  if (!leftOut)
    say(plan.readyToAssembleMinute === ready, `ready at ${ready}, not ${plan.readyToAssembleMinute}`);
  say((plan.boundMinute ?? 0) <= ready + DUST, `the bound ${plan.boundMinute} is after the plan, ${ready}`);
  say(!plan.proven || Math.abs((plan.boundMinute ?? 0) - ready) < DUST, 'proven, but the bound is lower');
  return broken;
}

/** The tasks of a batch as [face, step, number], back face first; which of them follow a curing step. */
function orderOf(
  input: CalendarInput,
  pieceId: string,
): { steps: [string, string, number][]; cureBefore: number[]; curesAtEnd: boolean } {
  const piece = input.pieces.find(({ id }) => id === pieceId);
  const steps: [string, string, number][] = [];
  const cureBefore: number[] = [];
  let cures = false;
  let curesAtEnd = false;
  const pass = (recipeId: string, face: string): void => {
    for (const step of input.recipes.find(({ id }) => id === recipeId)?.steps ?? []) {
      if (step.kind === 'cure') {
        cures = true;
        continue;
      }
      for (let number = 1; number <= step.coats; number++) {
        if (cures) cureBefore.push(steps.length);
        cures = false;
        steps.push([face, step.id, number]);
      }
    }
    // Curing at the end of a face's recipe is for the finished piece; turning it over needs no cure.
    if (cures && steps.length > 0) curesAtEnd = true;
    cures = false;
  };
  const both =
    piece?.showRecipeId === piece?.backRecipeId &&
    input.recipes.find(({ id }) => id === piece?.showRecipeId)?.faces === 'points';
  if (both) pass(piece?.showRecipeId ?? '', 'both');
  else {
    pass(piece?.backRecipeId ?? '', 'back');
    pass(piece?.showRecipeId ?? '', 'show');
  }
  return { steps, cureBefore, curesAtEnd };
}

function sumOf(
  input: CalendarInput,
  batch: CalendarPlan['batches'][number],
  of: (piece: CalendarInput['pieces'][number]) => number,
): number {
  return batch.pieces.reduce((sum, { pieceId, count }) => {
    const piece = input.pieces.find(({ id }) => id === pieceId);
    return sum + (piece === undefined ? Number.NaN : count * of(piece));
  }, 0);
}

function isWorkingMinute(input: CalendarInput, minute: number): boolean {
  const wall = onTheWall(input, minute);
  const day = Math.floor(wall / DAY);
  if (minute < input.startMinute || day >= input.horizonDays || input.daysOff.includes(day)) return false;
  const clock = wall - day * DAY;
  return (input.hours[(input.firstWeekday + day) % 7] ?? []).some(
    ({ fromMin, toMin }) => clock >= fromMin && clock < toMin,
  );
}

/** What the clock on the wall shows, in minutes since midnight of day 0. */
function onTheWall(input: CalendarInput, minute: number): number {
  let ahead = 0;
  for (const shift of input.clockShifts) if (shift.fromMinute <= minute) ahead = shift.aheadMin;
  return minute + ahead;
}
