import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { getState, setState } from '../../../client/state/app-state.ts';
import {
  answerFigure,
  askAgain,
  calendarChanged,
  wantAnswer,
} from '../../../client/state/project-answers.ts';
import type { LedgerAnswer, ProjectState } from '../../../server/http/contract.ts';
import { figure } from '../../../server/planning/figure.ts';
import type { Catalogue } from '../../../server/planning/product.ts';

const paid = (minor: number) => figure(minor, 'minor', { rule: 'paid', inputs: [] });
const ledger = (minor: number) => ({ revision: 1, forecast: paid(minor) }) as LedgerAnswer;
const json = (value: unknown, status = 200) => new Response(JSON.stringify(value), { status });
const asked = vi.fn<typeof fetch>();
const settled = () => new Promise((resolve) => setTimeout(resolve));

beforeEach(() => {
  vi.stubGlobal('fetch', asked);
  asked.mockReset();
  asked.mockImplementation(async () => json(ledger(100)));
  setState({
    project: { id: '7', revision: 1 } as ProjectState,
    catalogue: {} as Catalogue,
    ledger: null,
    working: null,
  });
});
afterEach(() => vi.unstubAllGlobals());

describe('an answer about the open project', () => {
  it('is asked for once, however often the screen is drawn, and again when the project or the calendar changes', async () => {
    wantAnswer('ledger');
    wantAnswer('ledger');
    await settled();
    expect(asked).toHaveBeenCalledTimes(1);
    expect(getState().ledger?.forecast.value).toBe(100);
    setState({ project: { id: '7', revision: 2 } as ProjectState });
    wantAnswer('ledger');
    calendarChanged();
    wantAnswer('ledger');
    await settled();
    expect(asked).toHaveBeenCalledTimes(3);
  });

  it('that was overtaken by a later question is not shown', async () => {
    const answers: ((response: Response) => void)[] = [];
    asked.mockImplementation(() => new Promise((resolve) => answers.push(resolve)));
    wantAnswer('ledger');
    setState({ project: { id: '7', revision: 2 } as ProjectState });
    wantAnswer('ledger');
    answers[1]?.(json(ledger(200)));
    await settled();
    answers[0]?.(json(ledger(100)));
    await settled();
    expect(getState().ledger?.forecast.value).toBe(200);
  });

  it('that failed is said once and asked for again when the server is heard of again', async () => {
    asked.mockImplementation(async () => {
      throw new TypeError('no connection');
    });
    wantAnswer('ledger');
    await settled();
    expect(getState().notice?.text).toBe('The Plywright server does not answer.');
    wantAnswer('ledger');
    expect(asked).toHaveBeenCalledTimes(1);
    asked.mockImplementation(async () => json(ledger(300)));
    askAgain();
    wantAnswer('ledger');
    await settled();
    expect(getState().ledger?.forecast.value).toBe(300);
  });

  it('carries its figures: an open working follows the new number and closes when it is gone', async () => {
    setState({ ledger: ledger(100) });
    expect(answerFigure('ledger/forecast')?.value).toBe(100);
    expect(answerFigure('ledger/headings/finish/paid')).toBeNull();
    expect(answerFigure('buy/netMinor')).toBeUndefined();
    setState({ working: { at: 'ledger/forecast', figure: paid(100), trail: [] } });
    asked.mockImplementation(async () => json(ledger(150)));
    wantAnswer('ledger');
    await settled();
    expect(getState().working?.figure?.value).toBe(150);
    asked.mockImplementation(async () => json({ revision: 2 }));
    setState({ project: { id: '7', revision: 2 } as ProjectState });
    wantAnswer('ledger');
    await settled();
    expect(getState().working).toBeNull();
  });
});
