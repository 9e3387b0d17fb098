import { gapSteps, touchColour } from '../bench/gap-scale';
import type { Pressed } from '../bench/virtual-press';
import type { Plan, StepPlan, Supply } from '../plan/plan';
import { type SetUp, setUps } from '../plan/set-ups';
import { showMoney } from '../quantity/currency';
import { showNumber, showTime } from '../quantity/show';
import { supplyUnit } from '../quantity/show-supply';
import type { Finding } from '../recipe/finding';
import type { Named } from '../recipe/stock';
import { cssText, escapeMarkup as text } from './escape';
import { gapPicture } from './gap-picture';
import { lastRuns } from './last-runs';
import { benchPagePolicyTag } from './page-policy';
import { pathData } from './path-data';
import { pressVerdict } from './press-facts';
import { runSections } from './run-section';
import { setUpSection } from './set-up-section';
import type { SheetFile } from './setup-svg';
import { stepFacts } from './step-facts';

export interface JobSheetOptions {
    /** When the work begins, a moment of quantity/calendar. */
    readonly start?: number | undefined;
    /** Inlays pressed together, by step. */
    readonly presses?: ReadonlyMap<number, Pressed>;
}

/**
 * The sheet that stands beside the machine: cautions first, how each set-up lies on the machine, then every step with a box to tick, its
 * settings and its picture, the day book of the run, what to have ready and what it costs. Black on white, fits A4 and US Letter, needs nothing from anywhere else.
 */
export function jobSheet(plan: Plan, findings: readonly Finding[], { start, presses }: JobSheetOptions = {}): SheetFile {
    const { recipe } = plan;
    const title = recipe.title || recipe.name;
    const open = findings.filter((finding) => finding.severity === 'error' || finding.severity === 'warning');
    const html = [
        '<!doctype html>',
        '<html lang="en">',
        '<head>',
        '<meta charset="utf-8">',
        benchPagePolicyTag,
        '<meta name="viewport" content="width=device-width">',
        `<title>${text(title)}, job sheet</title>`,
        `<style>${pageFoot(`${title}, issue ${recipe.revision}`)}${style}</style>`,
        '</head>',
        '<body><main>',
        `<header><h1>${text(title)}</h1><p>${text(headLine(plan))}</p>${about(recipe.about)}</header>`,
        section('Cautions', plan.cautions.length === 0 ? '' : list(plan.cautions)),
        section(
            'Not yet right',
            open.length === 0
                ? ''
                : list(open.map((finding) => `${finding.severity === 'error' ? 'Error' : 'Warning'}: ${finding.message}`)),
        ),
        section('On the machine', setUpSection(plan)),
        section(
            'Steps',
            `<ol class="steps">${plan.steps.map((step, index) => stepItem(step, setUps(plan), presses?.get(index))).join('\n')}</ol>`,
        ),
        section('Last runs', lastRunsOf(plan)),
        ...runSections(plan, start).map(([heading, body]) => section(heading, body)),
        section('To have on the bench', supplyTable(plan) + stockTexts(plan)),
        '<footer>Measured or changed: <span class="line"></span></footer>',
        '</main></body>',
        '</html>',
        '',
    ];
    return { path: 'job-sheet.html', text: html.join('\n'), note: 'to print and tick' };
}

/** At the foot of each page, since sheets fall apart at the bench: whose it is, and which of how many. */
function pageFoot(name: string): string {
    const foot = 'font: italic 8.5pt Georgia, serif; color: #000';
    return `
@page { margin: 14mm 14mm 15mm; @bottom-left { content: ${cssText(name)}; ${foot} } @bottom-right { content: counter(page) " of " counter(pages); ${foot} } }`;
}

const style = `
* { box-sizing: border-box }
body { font: 11pt/1.35 Georgia, 'Times New Roman', serif; color: #000; background: #fff; max-width: 186mm; margin: 0 auto; padding: 4mm }
h1 { font-size: 20pt; margin: 0 } h2 { font-size: 12pt; margin: 5mm 0 1.5mm; border-bottom: 0.3mm solid #000; break-after: avoid }
header p { margin: 1mm 0 0; text-wrap: balance } li { break-inside: avoid } ul { margin: 0; padding-left: 5mm }
.steps { list-style: none; margin: 0; padding: 0 }
.steps > li { display: grid; grid-template-columns: 7mm 1fr 34mm; gap: 2mm; padding: 2mm 0; border-bottom: 0.1mm solid #888; break-inside: avoid }
/* Without a picture the words have the whole line. */
.steps > li.words { grid-template-columns: 7mm 1fr }
.box { width: 5mm; height: 5mm; border: 0.4mm solid #000; margin-top: 0.5mm }
.steps h3 { font-size: 11pt; margin: 0 } dl { margin: 0; display: grid; grid-template-columns: max-content 1fr; column-gap: 3mm }
dt { font-style: italic } dd { margin: 0 } .blank, .about { font-style: italic } svg { width: 34mm; max-height: 30mm; border: 0.1mm solid #888 }
.gaps img { width: 60mm; image-rendering: pixelated; border: 0.1mm solid #888 } .gaps p { margin: 0; font-size: 9pt } .gaps i { display: inline-block; width: 4mm; height: 3mm; border: 0.1mm solid #888; margin-right: 1mm; print-color-adjust: exact }
/* A table is short: it goes to the next page as a whole. */
table { border-collapse: collapse; width: 100%; break-inside: avoid } td, th { text-align: left; padding: 0.6mm 2mm 0.6mm 0; border-bottom: 0.1mm solid #888 } td.n { text-align: right }
tr.sum td { font-weight: bold; border-bottom-color: #000 } .cost td:last-child { font-size: 9.5pt }
.book { list-style: none; margin: 0; padding: 0 } .book > li { display: grid; grid-template-columns: 7mm 40mm 1fr; gap: 2mm; padding: 1.5mm 0; border-bottom: 0.1mm solid #888; break-inside: avoid }
.book { font-size: 10pt; line-height: 1.3 } .book ul { list-style: none; padding: 0 } p { margin: 1mm 0 } .by { font-style: italic; margin: 0.5mm 0 0 }
.sheet { break-inside: avoid } svg.cut { width: 60mm; max-height: none; margin: 1mm 3mm 1mm 0; vertical-align: top }
.setup { display: flex; gap: 3mm; align-items: flex-start; margin: 1.5mm 0 } .setup p { margin: 0 } .setup svg.cut { flex: none; width: 45mm; max-height: 40mm; border: 0; margin: 0 }
.line { display: inline-block; width: 100mm; border-bottom: 0.2mm solid #000 } footer { margin-top: 6mm; break-inside: avoid }
/* On a small screen beside the machine the words have the whole line too. */
@media screen and (max-width: 600px) { .steps > li, .book > li { grid-template-columns: 7mm minmax(0, 1fr) } .steps > li > svg, .book > li > :nth-child(n + 3) { grid-column: 2 } dl { grid-template-columns: minmax(0, 1fr) } dd { padding-left: 4mm } .gaps img, svg, svg.cut, .line { max-width: 100% } }
@media print { body { padding: 0 0.3mm; max-width: none } }
`;

function headLine(plan: Plan): string {
    const { recipe, totals } = plan;
    const parts = [
        `Issue ${recipe.revision}`,
        `make ${recipe.make}`,
        recipe.laser === undefined ? 'no laser chosen' : `on ${recipe.laser.name}`,
        totals === undefined
            ? `times unknown (${plan.unknown ?? ''})`
            : `for one piece: machine ${showTime(totals.machine)}, hands ${showTime(totals.attended)}, waiting ${showTime(totals.waiting)}`,
    ];
    return parts.join(' · ');
}

function section(title: string, body: string): string {
    return body === '' ? '' : `<section><h2>${text(title)}</h2>${body}</section>`;
}

function list(items: readonly string[]): string {
    return `<ul>${items.map((item) => `<li>${text(item)}</li>`).join('')}</ul>`;
}

function stepItem(plan: StepPlan, all: readonly SetUp[], pressed: Pressed | undefined): string {
    const setUp = all.find((candidate) => plan.laser !== undefined && candidate.lasers.includes(plan.laser));
    const facts = stepFacts(plan).map((fact) => `<dt>${text(fact.label)}</dt><dd>${text(fact.value)}</dd>`);
    if (plan.inlay !== undefined && pressed !== undefined) {
        facts.push(`<dt>press</dt><dd>${text(pressVerdict(plan.inlay, pressed).sentence)}${gaps(pressed)}</dd>`);
    }
    if (setUp !== undefined) facts.push(`<dt>file</dt><dd>set-up ${setUp.number}</dd>`);
    if (plan.unplanned !== undefined) facts.push(`<dt>open</dt><dd>${text(plan.unplanned)}</dd>`);
    const on = plan.blank === undefined ? '' : ` <span class="blank">on ${text(plan.blank)}</span>`;
    const drawn = picture(plan, setUp);
    return `<li${drawn === '' ? ' class="words"' : ''}><div class="box"></div><div><h3>${plan.step.index + 1}. ${text(plan.title)}${on}</h3>${about(plan.step.about)}<dl>${facts.join('')}</dl></div>${drawn}</li>`;
}

/** The gap map, small, with the key to its colours. */
function gaps(pressed: Pressed): string {
    const steps = gapSteps.map(({ to, colour }) => [Number.isFinite(to) ? `to ${showNumber(to)} mm` : 'more', colour] as const);
    const key = [...steps, ...(pressed.bottoms ? [] : [['touches', touchColour] as const])].map(
        ([label, colour]) => `<span><i style="background:${colour}"></i>${label}</span>`,
    );
    return `<div class="gaps"><img src="${gapPicture(pressed)}" alt="Gap under the veneer by colour"><p>${key.join(' ')}</p></div>`;
}

function picture({ laser }: StepPlan, setUp: SetUp | undefined): string {
    const size = setUp?.blank.size;
    if (laser === undefined || size === undefined) return '';
    const paint =
        laser.step.kind === 'engrave' ? 'fill="#000" fill-rule="evenodd"' : 'fill="none" stroke="#000" stroke-width="0.6"';
    // Drawn larger than they are: at this size they would not be seen.
    const marks = (laser.marks ?? []).flatMap(({ points }) =>
        points.map(
            ({ x, y }) =>
                `<circle cx="${showNumber(x)}" cy="${showNumber(y)}" r="2" fill="none" stroke="#000" stroke-width="0.8"/>`,
        ),
    );
    const label = text(`${laser.step.name} as it lies under the laser`);
    return `<svg viewBox="0 0 ${showNumber(size.width)} ${showNumber(size.height)}" role="img" aria-label="${label}"><path ${paint} d="${pathData(laser.region, 1)}"/>${marks.join('')}</svg>`;
}

/** What a maker says of a thing, a paragraph a line. */
function about(said: string | undefined): string {
    return (said ?? '')
        .split('\n')
        .filter((line) => line !== '')
        .map((line) => `<p class="about">${text(line)}</p>`)
        .join('');
}

/** What is said of the stock that is used. */
function stockTexts({ recipe }: Plan): string {
    const used: (Named | undefined)[] = [recipe.laser, ...recipe.blanks.map(({ sheet }) => sheet)];
    for (const step of recipe.steps) {
        if (step.kind === 'seal') used.push(step.sealer);
        else if (step.kind === 'fill') used.push(step.resin);
        else if (step.kind === 'inlay') used.push(step.glue);
        else if (step.kind === 'finish') used.push(step.coat);
    }
    const texts = new Map(used.flatMap((each) => (each?.about === undefined ? [] : [[each.name, each.about] as const])));
    return texts.size === 0 ? '' : list([...texts].map(([name, said]) => `${name}: ${said}`));
}

function lastRunsOf(plan: Plan): string {
    return lastRuns(plan)
        .map(({ head, runs }) => `<p>${text(head)}.</p>${list(runs)}`)
        .join('');
}

function supplyTable(plan: Plan): string {
    if (plan.supplies.length === 0) return '';
    const currency = plan.cost?.currency;
    const costCell = ({ cost }: Supply): string =>
        currency === undefined ? '' : `<td class="n">${cost === undefined ? '' : text(showMoney(cost, currency))}</td>`;
    const rows = plan.supplies.map(
        (supply) =>
            `<tr><td>${text(supply.item)}</td><td class="n">${showNumber(supply.amount, 1)}</td><td>${supplyUnit(supply.amount, supply.unit)}</td>${costCell(supply)}<td>${text(supply.note)}</td></tr>`,
    );
    const short = plan.unknown === undefined ? '' : `<p>Amounts are not complete: ${text(plan.unknown)}.</p>`;
    return `${short}<table><thead><tr><th>item</th><th colspan="2">amount</th>${currency === undefined ? '' : '<th>costs</th>'}<th>note</th></tr></thead><tbody>${rows.join('')}</tbody></table>`;
}
