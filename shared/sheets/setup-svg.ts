import { besideWords } from '../plan/kerf-words';
import type { Lain } from '../plan/laid-piece';
import type { LaserPlan, LaserSettings, OutlineSettings, StrongPlace } from '../plan/laser-plan';
import type { Memo } from '../plan/memo';
import { originOn } from '../plan/origin';
import type { Plan } from '../plan/plan';
import { type SetUp, setUpPlace } from '../plan/set-ups';
import { outlineOf } from '../plan/toolpaths';
import { showLength, showNumber, showRatio } from '../quantity/show';
import type { BlankPoint } from '../toolpath/place';
import { dotsImage } from './dots-image';
import { escapeMarkup, fileName } from './escape';
import { pageSentence } from './page-sentence';
import { burntData, pathData } from './path-data';

/** One file of what leaves the program. */
export interface SheetFile {
    readonly path: string;
    readonly text: string;
    readonly note: string;
}

/**
 * A real-size drawing of one set-up: the page is the blank, in millimetres. Each step is a group of
 * its own, told apart by label and, for outlines, by dash. Engraved areas are filled, cuts are lines.
 */
export function setUpSvg(plan: Plan, setUp: SetUp, memo: Memo, lie?: Lain): SheetFile {
    const { blank, lasers } = setUp;
    const width = blank.size?.width ?? 0;
    const height = blank.size?.height ?? 0;
    const size = `width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}"`;
    const title = `${plan.recipe.title || plan.recipe.name}, set-up ${setUp.number}: ${setUpPlace(setUp)}`;
    const lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        `<svg xmlns="http://www.w3.org/2000/svg" ${size}>`,
        `  <title>${escapeMarkup(title)}</title>`,
        `  <desc>${escapeMarkup(`Issue ${plan.recipe.revision}. ${pageSentence(plan.recipe.laser, blank.size, 'blank')}`)}</desc>`,
        ...(lie === undefined ? [] : [`  <g transform="${matrixOf(lie, originOn(blank.size, plan.recipe.laser))}">`]),
        ...lasers.flatMap((laser) => group(laser, memo)),
        ...(lie === undefined ? [] : ['  </g>']),
        '</svg>',
        '',
    ];
    return {
        path: setUpFile(setUp, 'svg'),
        text: lines.join('\n'),
        note: `${lasers.map((laser) => laser.step.name).join(', ')} on ${setUpPlace(setUp)}`,
    };
}

/** The same turn and move in the drawing, which has Y downwards from the blank's top left corner. */
function matrixOf({ turn, x, y }: Lain, origin: BlankPoint): string {
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const right = origin.x - cos * origin.x - sin * origin.y + x;
    const down = origin.y + sin * origin.x - cos * origin.y - y;
    const share = (value: number): string => showNumber(value, 8);
    return `matrix(${share(cos)} ${share(-sin)} ${share(sin)} ${share(cos)} ${showNumber(right, 4)} ${showNumber(down, 4)})`;
}

/** The name of a set-up's file, such as `setup-2-tray-back.ngc`. */
export function setUpFile({ number, blank, side }: SetUp, ending: 'svg' | 'ngc'): string {
    return `setup-${number}-${fileName(blank.name)}${side === undefined ? '' : `-${side}`}.${ending}`;
}

function group(laser: LaserPlan, memo: Memo): string[] {
    const whole = laser.line ?? laser.whole ?? laser.region;
    const data = pathData(whole);
    const label = escapeMarkup(`${laser.step.kind} ${laser.step.name}: ${settingsLine(laser)}${besideWords(laser)}`);
    const id = fileName(laser.step.name);
    const lines = [`  <g id="${id}">`, `    <desc>${label}</desc>`];
    for (const [index, { grid }] of (laser.pictures ?? []).entries()) {
        lines.push(`    ${dotsImage(grid, `${id}-dots-${index + 1}`)}`);
    }
    if (laser.step.kind === 'engrave' && laser.line === undefined && whole.rings.length > 0)
        lines.push(`    <path id="${id}-area" fill="#000" fill-rule="evenodd" d="${data}"/>`);
    if (laser.outlinePasses > 0 && whole.rings.length > 0) {
        const dash = laser.step.kind === 'cut' || laser.line !== undefined ? '' : ' stroke-dasharray="1 0.4"';
        // A cut is drawn as it is followed: from its lead-in, and open over the tabs.
        const followed =
            laser.step.kind === 'cut'
                ? burntData(outlineOf({ ...laser, region: laser.cutLine?.followed ?? laser.region }, memo))
                : data;
        lines.push(`    <path id="${id}-outline" fill="none" stroke="#000" stroke-width="0.05"${dash} d="${followed}"/>`);
    }
    lines.push('  </g>');
    for (const marks of laser.marks ?? []) {
        const what = marks.tone === undefined ? 'holes to prick through' : 'light discs';
        const how = marks.settings === undefined ? '' : `: ${powerLine(marks.settings)}`;
        lines.push(
            `  <g id="${id}-marks-${marks.inlay + 1}">`,
            `    <desc>${escapeMarkup(`marks of ${laser.step.name}, ${what}${how}`)}</desc>`,
            `    <path fill="#000" fill-rule="evenodd" d="${pathData(marks.region)}"/>`,
            '  </g>',
        );
    }
    return lines;
}

/** The settings of a laser step in one line. */
export function settingsLine(laser: LaserPlan): string {
    const { settings } = laser;
    if (settings === undefined) return 'settings not known';
    if (laser.line !== undefined)
        return `${powerLine(settings, false)} along the outline${strongWords(laser.strongest, laser.depth?.value ?? 0)}`;
    return `${powerLine(settings, laser.step.kind === 'engrave')}${outlineWords(laser, powerAndSpeed)}`;
}

/** Power, speed, pitch and passes in one line. */
export function powerLine(settings: LaserSettings, area = true): string {
    const pitch = area ? `, pitch ${showLength(settings.pitch)}` : '';
    return `${powerAndSpeed(settings)}${pitch}, ${passesWords(settings.passes)}`;
}

function powerAndSpeed({ power, powerRatio, speed }: Pick<LaserSettings, 'power' | 'powerRatio' | 'speed'>): string {
    return `${Number.isNaN(powerRatio) ? `${showNumber(power, 1)} W` : showRatio(powerRatio)} at ${showNumber(speed, 1)} mm/s`;
}

export function passesWords(passes: number): string {
    return `${passes} pass${passes === 1 ? '' : 'es'}`;
}

/** @param how says the settings of the outline */
export function outlineWords({ step, outline, outlinePasses, depth }: LaserPlan, how: (of: OutlineSettings) => string): string {
    if (step.kind !== 'engrave' || outlinePasses === 0) return '';
    const along = `, then ${outlinePasses} along the outline`;
    if (outline === undefined) return along;
    const over = (outline.deepest ?? 0) - (depth?.value ?? 0);
    const deep = over > TOO_DEEP ? `, which digs ${showLength(outline.deepest!)} there` : '';
    return `${along} at ${how(outline)}, less power where the head is slower${deep}${strongWords(outline.strongest, Math.max(outline.deepest ?? 0, depth?.value ?? 0))}`;
}

/** @param rest depth of the rest, mm */
export function strongWords(strongest: StrongPlace | undefined, rest: number): string {
    if (strongest === undefined || strongest.deepest - rest <= TOO_DEEP) return '';
    const { deepest, times, x, y } = strongest;
    return `; near ${showLength(x)}, ${showLength(y)}, where the head is slowest, ${showNumber(times, 1)} times that dose: up to ${showLength(deepest)} deep`;
}

/** So much deeper than the rest an edge is told of, mm. */
const TOO_DEEP = 0.02;

function num(value: number): string {
    return showNumber(value, 3);
}
