import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { expect, it, vi } from 'vitest';
import { Memo } from '../../shared/plan/memo';
import { makeBenchView } from '../../shared/view/make-bench-view';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

// What the page of the bench view has of the editor.
vi.stubGlobal('acquireVsCodeApi', () => ({ postMessage: () => {}, getState: () => undefined, setState: () => {} }));
const { FilmStrip } = await import('../../extension/bench/webview/picture/film-strip');
vi.unstubAllGlobals();

async function sidesOf(steps: string): Promise<string[]> {
    const plan = await planOf(`${shop} recipe slab "Slab" { revision 1 laser shed
        blank slab { of ash-10 size 100 x 80 mm grain along width } ${steps} }`);
    const view = makeBenchView(plan, [], { uri: 'file:///a.kerf', textVersion: 1, recipes: [] }, new Memo());
    const run = { done: new Set<number>(), isOver: false, ends: new Map<number, number>() };
    const page = renderToString(h(FilmStrip, { view, chosen: 0, lit: undefined, run, choose: () => {} }));
    return [...page.matchAll(/<span class="frame-side">(.*?)<\/span>/g)].map(([, note]) => note!.trim());
}

const pocket = 'engrave a on slab { rectangle 20 x 10 mm depth 0.5 mm }';

it('the film strip says which face is up of a piece that is turned over, from its first picture on', async () => {
    expect(await sidesOf(`${pocket} flip slab`)).toEqual(['front up', 'front up', 'back up']);
});

it('and nothing of one that is not', async () => {
    expect(await sidesOf(pocket)).toEqual(['', '']);
});
