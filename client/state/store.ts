/** The one store of the client: what is known, who wants to hear of changes, and everything a screen may ask for. */
export { type AppState, getState, type Mode, type Notice, type ScreenName, subscribe } from './app-state.ts';

import { planCalendarFromNow, wantCalendar } from './calendar-actions.ts';
import { searchCutting, stopCutting, wantLayouts } from './cutting-actions.ts';
import { applyAgain, change, keepOffcut, redo, undo } from './edit-actions.ts';
import {
  bringBackProject,
  createProject,
  deletedProjects,
  deleteProject,
  duplicateProject,
  openProject,
  reloadCatalogue,
} from './project-actions.ts';
import { wantAnswer } from './project-answers.ts';
import {
  arrived,
  dismissNotice,
  goTo,
  redraw,
  say,
  selectPart,
  setMode,
  show,
  showProblems,
} from './view-actions.ts';
import { backWorking, closeWorking, openWorking } from './working-actions.ts';

export const actions = {
  openProject,
  createProject,
  duplicateProject,
  deleteProject,
  deletedProjects,
  bringBackProject,
  reloadCatalogue,
  change,
  applyAgain,
  undo,
  redo,
  wantCalendar,
  wantAnswer,
  planCalendarFromNow,
  searchCutting,
  wantLayouts,
  stopCutting,
  keepOffcut,
  show,
  selectPart,
  showProblems,
  goTo,
  arrived,
  setMode,
  say,
  redraw,
  dismissNotice,
  openWorking,
  closeWorking,
  backWorking,
} as const;
