import '@fontsource-variable/source-sans-3';
import './style/tokens.css';
import './style/base.css';
import { render } from 'lit-html';
import { listenForDroppedFiles } from './exchange/exchange-dialogs.ts';
import { SCREEN_WORDS } from './shell/navigation.ts';
import { renderShell } from './shell/render-shell.ts';
import { listenForShortcuts } from './shell/shortcuts.ts';
import { start } from './state/start.ts';
import { getState, subscribe } from './state/store.ts';

const root = document.querySelector<HTMLElement>('#app');
if (root === null) throw new Error('index.html has no #app');

let drawing = false;

/** Draws once for all the changes of state that one piece of work makes. */
function draw(): void {
  if (drawing || root === null) return;
  drawing = true;
  queueMicrotask(() => {
    drawing = false;
    const state = getState();
    document.title = [state.project?.settings.name, SCREEN_WORDS[state.screen], 'Plywright']
      .filter(Boolean)
      .join(' · ');
    render(renderShell(state), root);
  });
}

subscribe(draw);
draw();
listenForShortcuts();
listenForDroppedFiles();
void start();
