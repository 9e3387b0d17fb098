import type { Plan } from '../plan/plan';
import { showTime } from '../quantity/show';
import { escapeMarkup as text } from '../sheets/escape';
import type { SheetFile } from '../sheets/setup-svg';
import { type AskedFigure, type ShownStep, type TabletJob, type TabletStep, tabletSteps } from './tablet-job';
import { tabletStyle } from './tablet-style';
import { tabletWords } from './tablet-words';

/** The page's own script, and the hash by which its policy lets nothing else run (`sha256-…`, Content Security Policy 3). */
export interface PageScript {
    readonly text: string;
    readonly hash: string;
}

/** Lines of cautions that stand on top; the others are folded below them. */
const CAUTIONS = 6;

/**
 * One file for a tablet or a telephone at the bench, that works from a stick or a share without a network: steps to tick, waits that
 * ring, figures and notes beside their step, kept by the browser over closing. It gives back a run, which the editor takes in.
 * @param mark the fingerprint of what recipe and stock say
 */
export function tabletPage(plan: Plan, script: PageScript, mark: string | undefined): SheetFile {
    const { recipe } = plan;
    const title = recipe.title || recipe.name;
    const steps = tabletSteps(plan);
    const job: TabletJob = {
        ...{ recipe: recipe.name, title, revision: recipe.revision },
        ...(recipe.laser === undefined ? {} : { laser: recipe.laser.name }),
        ...(mark === undefined ? {} : { mark }),
        steps: steps.map(known),
        kinds: kindsOf(plan),
        words: tabletWords(),
    };
    const html = [
        '<!doctype html>',
        '<html lang="en">',
        '<head>',
        '<meta charset="utf-8">',
        `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src '${script.hash}'; base-uri 'none'; form-action 'none'">`,
        '<meta name="viewport" content="width=device-width, initial-scale=1">',
        '<meta name="color-scheme" content="light dark">',
        `<title>${text(title)} at the bench</title>`,
        `<style>${tabletStyle}</style>`,
        '</head>',
        '<body>',
        `<header><h1>${text(title)}</h1><p>Issue ${recipe.revision}${recipe.laser === undefined ? '' : ` · ${text(recipe.laser.name)}`} · ${steps.length} step${steps.length === 1 ? '' : 's'}</p></header>`,
        '<main>',
        cautions(plan.cautions),
        `<ol>${steps.map(stepMarkup).join('\n')}</ol>`,
        '<section id="end" aria-labelledby="end-title">',
        '<h2 id="end-title">The run</h2>',
        '<label class="wide">What went well or wrong? <textarea id="note" rows="3" maxlength="500"></textarea></label>',
        '<p>The saved file is a run. In the editor, <b>Kerfbook: Take In a Run…</b> puts it beside the others; or copy it into the folder <code>runs</code> beside the recipe.</p>',
        '<p id="kept">This page needs a browser that runs its script to keep ticks and to save the run.</p>',
        '</section>',
        '</main>',
        '<footer><span id="done" role="status"></span><button id="save" type="button">Save the run</button><button id="again" type="button">Begin again</button></footer>',
        '<p id="say" class="unseen" role="alert"></p>',
        `<script type="application/json" id="job">${asData(job)}</script>`,
        `<script>${script.text}</script>`,
        '</body>',
        '</html>',
        '',
    ];
    return { path: 'tablet.html', text: html.join('\n'), note: 'to tick on a tablet, without a network' };
}

function kindsOf(plan: Plan): Record<string, string> {
    return Object.fromEntries(
        plan.steps.flatMap(({ step }) => (step.kind === 'engrave' || step.kind === 'cut' ? [[step.name, step.kind]] : [])),
    );
}

function known({ id, label, wait, burnt, asked }: ShownStep): TabletStep {
    return { ...{ id, label, asked }, ...(wait === undefined ? {} : { wait }), ...(burnt === undefined ? {} : { burnt }) };
}

/** JSON in which nothing ends the element that it stands in. */
function asData(job: TabletJob): string {
    return JSON.stringify(job).replaceAll('<', '\\u003c').replaceAll('\u2028', '\\u2028').replaceAll('\u2029', '\\u2029');
}

function cautions(all: readonly string[]): string {
    if (all.length === 0) return '';
    const list = (some: readonly string[]): string => `<ul>${some.map((each) => `<li>${text(each)}</li>`).join('')}</ul>`;
    const rest = all.slice(CAUTIONS);
    const more = rest.length === 0 ? '' : `<details><summary>${rest.length} more</summary>${list(rest)}</details>`;
    return `<section class="cautions" aria-labelledby="cautions"><h2 id="cautions">Cautions</h2>${list(all.slice(0, CAUTIONS))}${more}</section>`;
}

function stepMarkup({ id, label, facts, about, wait, asked, mirrored }: ShownStep, index: number): string {
    const said = (about ?? '').split('\n').filter((line) => line !== '');
    const clock =
        wait === undefined
            ? ''
            : `<p class="clock"><span class="left" aria-live="off">${text(showTime(wait))} once it is ticked</span></p>`;
    return `<li data-step="${text(id)}">
<label class="tick"><input type="checkbox"><span>${index + 1}. ${text(label)}${mirrored ? ' <strong class="mirrored">MIRRORED</strong>' : ''}</span></label>
${said.map((line) => `<p class="about">${text(line)}</p>`).join('')}<dl>${facts.map((fact) => `<dt>${text(fact.label)}</dt><dd>${text(fact.value)}</dd>`).join('')}</dl>${clock}
${asked.map(figureMarkup).join('\n')}
<details class="notes"><summary>Note or photo</summary><label class="wide">Note on this step <input class="note" maxlength="300" autocomplete="off"></label><label class="wide">Names of photos <input class="photos" maxlength="200" autocomplete="off"></label></details>
</li>`;
}

function figureMarkup({ step, what, wish, unit }: AskedFigure, index: number): string {
    const title = `${what} of ${step}`;
    if (what === 'through')
        return `<label class="figure">${text(title)}: did it come through? <select data-asked="${index}"><option value="">not looked at</option><option value="yes">through everywhere</option><option value="no">somewhere it holds</option></select></label>`;
    return `<label class="figure">${text(title)}, to be ${text(wish)} <span><input data-asked="${index}" inputmode="decimal" autocomplete="off" maxlength="12"> ${text(unit)}</span><span class="remark" role="status"></span></label>`;
}
