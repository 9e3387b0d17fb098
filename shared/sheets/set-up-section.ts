import { outputOf, outputWords } from '../burn/output';
import type { Bounds } from '../geometry/region';
import { type MachinePoint, plannedMarks } from '../plan/laid-piece';
import { originOn, originSentence } from '../plan/origin';
import type { Plan } from '../plan/plan';
import { endOfSetUp, type Kept, reachOfSteps, type SetUp, setUpPlace, setUps } from '../plan/set-ups';
import type { Quantity } from '../quantity/quantity';
import { showLength, showNumber } from '../quantity/show';
import { reachOfAll } from '../toolpath/reach';
import { escapeMarkup as text } from './escape';
import { pathData } from './path-data';
import { pointWords, reachOnMachine } from './reach-line';

/** How each set-up lies on the machine: a sketch with X 0 Y 0 and what the head moves over, and the same in words. */
export function setUpSection(plan: Plan): string {
    return setUps(plan)
        .map((setUp) => `<div class="sheet setup">${sketch(plan, setUp)}<p>${text(setUpWords(plan, setUp))}</p></div>`)
        .join('');
}

function setUpWords(plan: Plan, setUp: SetUp): string {
    const { laser } = plan.recipe;
    const { number, blank, lasers } = setUp;
    const end = endOfSetUp(setUp);
    const until = end === undefined ? '' : ` It ends when: ${end}.`;
    const again = `${setUp.before === undefined ? '' : ` ${againWords(setUp)}`}${marksWords(plannedMarks(plan, setUp), number)}${setUp.keeps.map((kept) => ` ${keptWords(kept)}`).join('')}`;
    const head = `Set-up ${number}, ${lasers.map(({ step }) => step.name).join(', ')} on ${setUpPlace(setUp)}: ${originSentence(laser)}; the file switches on with ${outputWords(outputOf(laser))}.`;
    const { size } = blank;
    const reach = knownReach(setUp, laser);
    if (reach === undefined || size === undefined) return head + until + again;
    const beside = [
        [-reach.minX, 'on the left'],
        [reach.maxX - size.width, 'on the right'],
        [-reach.minY, 'at the far side'],
        [reach.maxY - size.height, 'towards you'],
    ] as const;
    const free = beside
        .filter(([room]) => room > 0.005)
        .map(([room, side]) => `${showNumber(Math.ceil(room * 10 - 1e-6) / 10, 1)} mm ${side}`);
    const room = free.length === 0 ? 'It stays over the blank.' : `Beyond the blank it needs ${free.join(', ')}.`;
    const { field } = laser ?? {};
    const limits =
        field === undefined
            ? ''
            : ` The machine reaches ${showNumber(field.width.value)} × ${showNumber(field.height.value)} mm.`;
    return `${head} The head moves over ${reachOnMachine(reach, originOn(size, laser))}, run-up and way back included. ${room}${limits}${until}${again}`;
}

function againWords({ before, blank, foundBy }: SetUp): string {
    const how = foundBy === undefined ? 'nothing in the recipe says how it finds its place' : foundBy;
    return `${blank.name} lay there in set-up ${before} before: ${how}.`;
}

/** Where its marks are planned; two of them are enough to have the files moved. */
function marksWords(marks: readonly MachinePoint[], setUp: number): string {
    if (marks.length < 2) return '';
    return ` The marks are planned at ${marks.map((each, index) => `${index + 1}: ${pointWords(each)}`).join(', ')}. Where they are not, measure where they are: kerfbook lay --set-up ${setUp} --marks writes the files for this piece.`;
}

function keptWords({ step, until }: Kept): string {
    return `${step} has to stay as it is until set-up ${until} is laid down: it is found by it.`;
}

/** Nothing is said of a way that is only half known. */
function knownReach({ blank, lasers }: SetUp, laser: Plan['recipe']['laser']): Bounds | undefined {
    return lasers.some(({ reach }) => reach === undefined) ? undefined : reachOfSteps(lasers, blank, laser);
}

function sketch({ recipe: { laser } }: Plan, setUp: SetUp): string {
    const { size } = setUp.blank;
    if (size === undefined || !(size.width > 0 && size.height > 0)) return '';
    const reach = knownReach(setUp, laser);
    const all = reachOfAll([{ minX: 0, minY: 0, maxX: size.width, maxY: size.height }, reach])!;
    const unit = Math.max(all.maxX - all.minX, all.maxY - all.minY) / 100;
    const { x, y } = originOn(size, laser);
    const { head, below } = captions(setUp);
    const said = [...head, below].filter((each) => each !== '').join(', ');
    const label = text(
        `Set-up ${setUp.number}: where X 0 Y 0 lies on ${setUpPlace(setUp)}, and what the head moves over; ${said.toLowerCase()}`,
    );
    const above = (4 + 10 * head.length) * unit;
    const view = [all.minX - 4 * unit, all.minY - above, all.maxX - all.minX + 8 * unit, all.maxY - all.minY + above + 12 * unit];
    return [
        `<svg class="cut" viewBox="${view.map(mm).join(' ')}" role="img" aria-label="${label}">`,
        `<rect width="${mm(size.width)}" height="${mm(size.height)}" fill="#ddd" stroke="#000" stroke-width="${mm(0.6 * unit)}"/>`,
        ...setUp.lasers.map(({ region }) => `<path fill="#999" fill-rule="evenodd" d="${pathData(region, 1)}"/>`),
        ...(reach === undefined ? [] : [dashed(reach, unit)]),
        `<circle cx="${mm(x)}" cy="${mm(y)}" r="${mm(3 * unit)}" fill="#fff" stroke="#000" stroke-width="${mm(unit)}"/>`,
        `<path fill="none" stroke="#000" stroke-width="${mm(unit)}" d="M${mm(x)} ${mm(y - 3 * unit)}v${mm(6 * unit)}M${mm(x - 3 * unit)} ${mm(y)}h${mm(6 * unit)}"/>`,
        grainArrow(setUp, unit),
        ...head.map((words, n) => caption(words, all.minX, all.minY - (10 * (head.length - n) - 6) * unit, 9 * unit)),
        caption(below, all.minX, all.maxY + 9 * unit, 7 * unit),
        '</svg>',
    ].join('');
}

/** What must not be overlooked, in large letters above the blank; and its size below. */
function captions({ blank, side, lasers }: SetUp): { readonly head: readonly string[]; readonly below: string } {
    const { width, height } = blank.blank.size ?? {};
    return {
        head: [
            ...(side === undefined ? [] : [`${side.toUpperCase()} UP`]),
            ...(lasers.some(({ mirrorAxis }) => mirrorAxis !== undefined) ? ['MIRRORED'] : []),
        ],
        below: width === undefined || height === undefined ? '' : sizeWords(width, height),
    };
}

/** "300 × 200 mm": the unit once, where both have it. */
function sizeWords(width: Quantity, height: Quantity): string {
    const whole = showLength(width.value, width.unit);
    const across = width.unit === height.unit ? whole.replace(` ${width.unit}`, '') : whole;
    return `${across} × ${showLength(height.value, height.unit)}`;
}

function caption(words: string, x: number, y: number, size: number): string {
    return `<text x="${mm(x)}" y="${mm(y)}" font-size="${mm(size)}" font-weight="bold">${text(words)}</text>`;
}

/** A double arrow along the grain, in the corner that no origin lies in. */
function grainArrow({ blank: { size, grain } }: SetUp, unit: number): string {
    if (grain === undefined || size === undefined) return '';
    const long = Math.min(24 * unit, 0.4 * (grain === 0 ? size.width : size.height));
    const [x, y] = [0.72 * size.width, 0.12 * size.height];
    const [dx, dy] = grain === 0 ? [long, 0] : [0, long];
    const [fromX, fromY] = grain === 0 ? [x - long / 2, y] : [x, y];
    const head = 3 * unit;
    const ends = [
        [fromX, fromY, 1],
        [fromX + dx, fromY + dy, -1],
    ] as const;
    const heads = ends.map(([ex, ey, way]) =>
        grain === 0
            ? `M${mm(ex + way * head)} ${mm(ey - head)}L${mm(ex)} ${mm(ey)}L${mm(ex + way * head)} ${mm(ey + head)}`
            : `M${mm(ex - head)} ${mm(ey + way * head)}L${mm(ex)} ${mm(ey)}L${mm(ex + head)} ${mm(ey + way * head)}`,
    );
    const line = `M${mm(fromX)} ${mm(fromY)}L${mm(fromX + dx)} ${mm(fromY + dy)}`;
    const words = grain === 0 ? [fromX, y + 9 * unit] : [x + 4 * unit, y + 6 * unit];
    const path = `<path fill="none" stroke="#000" stroke-width="${mm(unit)}" d="${line}${heads.join('')}"/>`;
    return path + caption('grain', words[0]!, words[1]!, 6 * unit);
}

function dashed({ minX, minY, maxX, maxY }: Bounds, unit: number): string {
    return `<rect x="${mm(minX)}" y="${mm(minY)}" width="${mm(maxX - minX)}" height="${mm(maxY - minY)}" fill="none" stroke="#000" stroke-width="${mm(0.6 * unit)}" stroke-dasharray="${mm(3 * unit)} ${mm(2 * unit)}"/>`;
}

function mm(value: number): string {
    return showNumber(value, 2);
}
