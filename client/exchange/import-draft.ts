import type { ImportPreview, ImportRequest, PreviewRow, ProjectState } from '../../server/http/contract.ts';
import { ApiError, request } from '../state/api.ts';
import { openProject, projectPath, reloadProjects } from '../state/project-actions.ts';
import { actions, getState } from '../state/store.ts';
import { FIRST_IMPORTED, partInserts, partsWords } from './part-inserts.ts';
import { hasNoSize, isMarked } from './preview-notes.ts';
import { type ListSource, readListFile, readListText } from './read-list-file.ts';

type Source = Extract<ListSource, { readonly kind: 'text' | 'workbook' }>;
export type ImportAnswers = Omit<ImportRequest, 'text' | 'workbookBase64'>;

/** What an import has come to. */
export interface ImportDraft {
  readonly typed: string;
  /** Name of the file; null for pasted text. */
  readonly fileName: string | null;
  readonly source: Source | null;
  readonly answers: ImportAnswers;
  readonly preview: ImportPreview | null;
  /** A project file instead of a list. */
  readonly project: object | null;
  /** Positions of the rows that are not taken. */
  readonly leftOut: ReadonlySet<number>;
  readonly onlyMarked: boolean;
  readonly busy: 'reading' | 'adding' | null;
  readonly fault: { readonly message: string; readonly wayOut: string } | null;
}

export const EMPTY_DRAFT: ImportDraft = {
  typed: '',
  fileName: null,
  source: null,
  answers: {},
  preview: null,
  project: null,
  leftOut: new Set(),
  onlyMarked: false,
  busy: null,
  fault: null,
};

export interface ImportActions {
  readonly draft: () => ImportDraft;
  readonly type: (text: string) => void;
  readonly readTyped: () => Promise<void>;
  readonly readFile: (file: File) => Promise<void>;
  readonly answer: (answers: ImportAnswers) => Promise<void>;
  readonly leaveOut: (index: number, out: boolean) => void;
  readonly leaveOutSizeless: (out: boolean) => void;
  readonly showOnlyMarked: (only: boolean) => void;
  readonly back: () => void;
  /** True when the parts or the project have been added. */
  readonly add: () => Promise<boolean>;
}

/** The steps of an import; `changed` is called after each change of the draft. */
export function importActions(changed: (before: ImportDraft) => void): ImportActions {
  let draft = EMPTY_DRAFT;
  /** Counts the questions sent, so that an answer that was overtaken is dropped. */
  let asked = 0;

  function set(patch: Partial<ImportDraft>): void {
    const before = draft;
    draft = { ...draft, ...patch };
    changed(before);
  }

  async function take(source: ListSource, fileName: string | null): Promise<void> {
    const { message, wayOut } = source.kind === 'refused' ? source : { message: '', wayOut: '' };
    const fresh = { ...EMPTY_DRAFT, typed: draft.typed, fileName };
    if (source.kind === 'refused') set({ ...fresh, fault: { message, wayOut } });
    else if (source.kind === 'project') set({ ...fresh, project: source.document });
    else if (getState().project === null)
      set({
        ...fresh,
        fault: {
          message: 'A part list needs a project to go into.',
          wayOut: 'Begin a project first, or import a project file.',
        },
      });
    else {
      set({ ...fresh, source });
      await ask({});
    }
  }

  async function ask(answers: ImportAnswers): Promise<void> {
    const { source } = draft;
    const projectId = getState().project?.id;
    if (source === null || projectId === undefined) return;
    asked++;
    const mine = asked;
    set({ answers, busy: 'reading', fault: null });
    try {
      const preview = await request<ImportPreview>('POST', projectPath(projectId, 'import/preview'), {
        ...(source.kind === 'text' ? { text: source.text } : { workbookBase64: source.base64 }),
        ...answers,
      });
      if (mine !== asked) return;
      const sameRows = draft.preview?.rows.length === preview.rows.length;
      set({ preview, busy: null, leftOut: sameRows ? draft.leftOut : new Set() });
    } catch (error) {
      if (mine === asked) set({ busy: null, fault: faultOf(error) });
    }
  }

  return {
    draft: () => draft,
    type: (typed) => set({ typed, fault: null }),
    readTyped: () => take(readListText(draft.typed), null),
    async readFile(file) {
      set({ busy: 'reading', fault: null });
      await take(await readListFile(file).catch(() => unreadable(file)), file.name);
    },
    answer: (answers) => ask({ ...draft.answers, ...answers }),
    leaveOut(index, out) {
      const leftOut = new Set(draft.leftOut);
      if (out) leftOut.add(index);
      else leftOut.delete(index);
      set({ leftOut });
    },
    leaveOutSizeless(out) {
      const leftOut = new Set(draft.leftOut);
      for (const [index, row] of (draft.preview?.rows ?? []).entries())
        if (hasNoSize(row)) {
          if (out) leftOut.add(index);
          else leftOut.delete(index);
        }
      set({ leftOut });
    },
    showOnlyMarked: (onlyMarked) => set({ onlyMarked }),
    back() {
      asked++;
      set({ ...EMPTY_DRAFT, typed: draft.typed });
    },
    async add() {
      set({ busy: 'adding', fault: null });
      const fault =
        draft.project === null ? await addParts(takenRows(draft)) : await addProject(draft.project);
      set({ busy: null, fault });
      return fault === null;
    },
  };
}

/** The rows that will be added. */
export function takenRows({ preview, leftOut }: ImportDraft): readonly PreviewRow[] {
  return preview?.rows.filter((_row, index) => !leftOut.has(index)) ?? [];
}

/** The rows shown, each with its position: all, or those with a marked cell. */
export function shownRows({ preview, onlyMarked }: ImportDraft): readonly (readonly [number, PreviewRow])[] {
  const rows = [...(preview?.rows ?? []).entries()];
  return onlyMarked ? rows.filter(([, row]) => isMarked(row)) : rows;
}

async function addParts(rows: readonly PreviewRow[]): Promise<ImportDraft['fault']> {
  const noticeBefore = getState().notice;
  const answer = await actions.change(partInserts(rows), `import ${partsWords(rows.length)}`);
  if (answer === null) {
    // Said here instead of on the page behind, where the same parts could then be added a second time.
    const notice = getState().notice;
    if (noticeBefore === null) actions.dismissNotice();
    else actions.say(noticeBefore);
    return {
      message: notice?.kind === 'stale' ? 'The project was changed in another window.' : (notice?.text ?? ''),
      wayOut:
        notice?.kind === 'stale'
          ? 'Its newest state is there now: add the parts again.'
          : (notice?.wayOut ?? ''),
    };
  }
  const first = answer.inserted[FIRST_IMPORTED];
  actions.say({
    kind: 'info',
    text: `${partsWords(rows.length)} imported.`,
    wayOut: 'One undo takes them all back.',
  });
  if (first !== undefined) actions.goTo({ table: 'parts', id: first, field: 'name' });
  return null;
}

async function addProject(document: object): Promise<ImportDraft['fault']> {
  try {
    const project = await request<ProjectState>('POST', '/api/projects/import', document);
    await reloadProjects();
    await openProject(project.id);
    actions.say({ kind: 'info', text: `“${project.settings.name}” is added to your projects.` });
    return null;
  } catch (error) {
    return faultOf(error);
  }
}

function faultOf(error: unknown): NonNullable<ImportDraft['fault']> {
  if (!(error instanceof ApiError)) throw error;
  const place = error.field === null ? '' : ` (${error.field})`;
  return { message: `${error.message}${place}`, wayOut: error.wayOut };
}

function unreadable(file: File): ListSource {
  return {
    kind: 'refused',
    message: `“${file.name}” cannot be opened.`,
    wayOut: 'Check that it is a file and that you may read it, or paste its contents.',
  };
}
