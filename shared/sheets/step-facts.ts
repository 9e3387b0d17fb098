import { onBoardMeaning, rangeMeaning } from '../burn/interval-words';
import { sideOf } from '../piece/lie';
import { kerfWords } from '../plan/kerf-words';
import { asideAtEdge } from '../plan/laid-aside';
import type { DottedPicture, GoesOn, LaserPlan, MarkWork } from '../plan/laser-plan';
import type { FillPlan, InlayPlan, StepPlan } from '../plan/plan';
import { missingBasis, throughWords } from '../plan/through-words';
import { type Interval, isLopsided, spread } from '../quantity/interval';
import type { Quantity } from '../quantity/quantity';
import {
    showArea,
    showLength,
    showLengthInterval,
    showMass,
    showNumber,
    showQuantity,
    showRatio,
    showTime,
    showVolume,
} from '../quantity/show';
import type { Where } from '../quantity/where';
import type { Cut, Engrave, Sand } from '../recipe/step';
import type { Resin } from '../recipe/stock';
import { focusLine } from './focus-line';
import { powerLine, settingsLine } from './setup-svg';

/** One short fact of a step, for the job sheet, the checklist and the bench view. */
export interface Fact {
    readonly label: string;
    readonly value: string;
    readonly where?: Where;
}

/** What a person at the bench needs to know of a step, most needed first. */
export function stepFacts(plan: StepPlan): Fact[] {
    return [...workFacts(plan), ...timeFacts(plan), ...cautionFacts(plan)];
}

/** The same without times and cautions, for where those stand by themselves. */
export function workFacts(plan: StepPlan): Fact[] {
    return [...laserFacts(plan), ...fillFacts(plan), ...inlayFacts(plan), ...woodFacts(plan), ...benchFacts(plan)];
}

function laserFacts({ laser, step }: StepPlan): Fact[] {
    if (laser === undefined || (step.kind !== 'engrave' && step.kind !== 'cut')) return [];
    const { settings } = laser;
    const line = settings === undefined ? 'not known' : settingsLine(laser);
    const facts: Fact[] = [
        ...(laser.lie === undefined ? [] : [{ label: 'face', value: sideOf(laser.lie) }]),
        { label: 'settings', value: `${line}${settings?.guess === true ? ` (a guess: ${missingBasis(step)})` : ''}` },
    ];
    facts.push(...depthFacts(laser, step.kind === 'engrave' ? step.depth : undefined));
    const kerf = kerfWords(laser);
    if (kerf !== undefined) facts.push({ label: 'kerf', value: kerf, ...kerfWhere(step) });
    const focus = focusLine(laser.focus);
    if (focus !== undefined) facts.push({ label: 'focus', value: focus });
    facts.push({ label: 'air', value: step.air?.value ?? (step.kind === 'cut' ? 'on' : 'off') });
    if (laser.line !== undefined) facts.push({ label: 'outline', value: showLength(laser.perimeter) });
    else if (step.kind === 'engrave') facts.push({ label: 'area', value: showArea(laser.area) });
    for (const picture of laser.pictures ?? []) facts.push({ label: 'dots', value: dotsFact(picture) });
    for (const marks of laser.marks ?? []) facts.push({ label: 'marks', value: marksFact(marks) });
    if (laser.mirrorAxis !== undefined) facts.push({ label: 'mirror', value: 'yes', where: step.mirror[0]! });
    return facts;
}

/** Where a kerf that is written can be changed. */
function kerfWhere(step: Engrave | Cut): Pick<Fact, 'where'> {
    const written = step.kind === 'cut' ? step.kerf : undefined;
    return written === undefined ? {} : { where: written.where };
}

function depthFacts(laser: LaserPlan, wish: Engrave['depth']): Fact[] {
    if (laser.tone !== undefined) return [{ label: 'tone', value: toneWords(laser, laser.tone) }];
    const soFar = soFarFacts(laser, wish !== undefined && 'unit' in wish ? wish.unit : 'mm');
    if (laser.through) return [{ label: 'depth', value: throughWords(laser) }, ...soFar];
    if (laser.depth === undefined) return [];
    const unit = wish !== undefined && 'unit' in wish ? wish.unit : 'mm';
    const { givesFor } = laser.settings ?? {};
    const means = givesFor === undefined || spread(laser.depth) < 5e-4 ? '' : ` (${rangeMeaning(givesFor)})`;
    const value = `${showLengthInterval(laser.depth, unit)}${means}`;
    const depth = { label: 'depth', value, ...(wish === undefined ? {} : { where: wish.where }) };
    const onBoard = laser.settings?.onBoard;
    return laser.goesOn === undefined
        ? [depth, ...(onBoard === undefined ? [] : [{ label: 'measured board', value: onBoardMeaning(onBoard) }])]
        : [depth, ...soFar];
}

function soFarFacts({ goesOn, settings }: LaserPlan, unit: string): Fact[] {
    return goesOn === undefined ? [] : [{ label: 'so far', value: soFarWords(goesOn, settings !== undefined, unit) }];
}

/** Of a pocket that goes on: what it has, and what the settings are for. */
function soFarWords({ reached, passes, left }: GoesOn, isSolved: boolean, unit: string): string {
    const has = `${showLength(reached, unit)} after ${passes === 1 ? 'one pass' : `${passes} passes`}`;
    return isSolved
        ? `${has}; the settings are for the ${showLength(left, unit)} that are left`
        : `${has}: nothing is left to burn`;
}

/** A tone that no square was judged by is a guess, and says so. */
function toneWords({ settings }: LaserPlan, tone: number): string {
    if (settings !== undefined && settings.givesTone === undefined)
        return `${showRatio(tone)} (a guess: no square judged by tone)`;
    return `${showRatio(tone)}${settings?.throughTape === true ? ' (judged without tape: try a corner first)' : ''}`;
}

function dotsFact({ artName, grid, dots, covered }: DottedPicture): string {
    const share = dots / (grid.columns * grid.rows);
    const wider = covered === undefined ? '' : `, which as wide as the spot darken ${showRatio(covered)} of it`;
    return `${artName}: ${grid.columns} x ${grid.rows} of ${showLength(grid.pitch)}, ${showRatio(share)} of them burnt${wider}`;
}

function marksFact({ points, tone, settings }: MarkWork): string {
    const many = points.length !== 1;
    const what = tone === undefined ? `small hole${many ? 's' : ''} down to the backing` : `light disc${many ? 's' : ''}`;
    const how = tone === undefined || settings === undefined ? '' : `, ${powerLine(settings)}`;
    return `${points.length} ${what}${how}`;
}

function fillFacts({ fill, step }: StepPlan): Fact[] {
    if (fill === undefined || step.kind !== 'fill') return [];
    const facts: Fact[] = [{ label: 'volume', value: showVolume(fill.mix.volume) }];
    const parts = fill.mix.parts;
    if (parts !== undefined) {
        const show = parts.by === 'volume' ? showVolume : showMass;
        facts.push({ label: 'mix', value: `${show(parts.resin)} resin, ${show(parts.hardener)} hardener` });
    }
    facts.push(
        ...loadFacts('pigment', fill.mix.pigment, step.resin?.pigment),
        ...loadFacts('metal powder', fill.mix.powder, step.resin?.powder),
    );
    if (step.resin?.potLife !== undefined) facts.push({ label: 'pot life', value: showTime(step.resin.potLife.value) });
    if (fill.cups.count > 1) facts.push({ label: 'cups', value: `${fill.cups.count}, each for ${piecesOf(fill.cups.pieces)}` });
    facts.push(...layerFacts(fill, step.resin));
    return facts;
}

/** What is weighed out, and which share of all that is in the cup it then is. */
function loadFacts(label: string, mass: number | undefined, share: Quantity | undefined): Fact[] {
    if (mass === undefined || share === undefined) return [];
    return [{ label, value: `${showMass(mass)}, ${showRatio(share.value)} of the whole` }];
}

function piecesOf(count: number): string {
    return `${count} piece${count === 1 ? '' : 's'}`;
}

/** How a deep fill is built up, and when the next layer bonds by itself. */
function layerFacts({ layer, pours }: FillPlan, resin: Resin | undefined): Fact[] {
    const facts: Fact[] = [];
    if (layer.of > 1) facts.push({ label: 'layer', value: `${layer.number} of ${layer.of}, ${showLength(layer.depth)} deep` });
    if (pours.count > 1) {
        facts.push({ label: 'pours', value: `${pours.count} of ${showLength(pours.each)}, ${showTime(pours.between)} apart` });
    }
    const window = resin?.recoat;
    const more = pours.count > 1 || layer.number < layer.of;
    if (more && window !== undefined) {
        const [from, to] = [window.value - window.tolerance, window.value + window.tolerance];
        facts.push({ label: 'next layer', value: `${showTime(from)} to ${showTime(to)} later; after that sand it dull first` });
    }
    return facts;
}

function inlayFacts({ inlay, step }: StepPlan): Fact[] {
    if (inlay === undefined || step.kind !== 'inlay') return [];
    const facts: Fact[] = [];
    if (step.glue !== undefined) facts.push({ label: 'glue', value: step.glue.name });
    if (inlay.marks !== undefined && inlay.marks.placed > 0) {
        facts.push({
            label: 'marks',
            value: 'prick through the backing at the marks, lay the halves mark on mark',
            ...(step.marks === undefined ? {} : { where: step.marks.where }),
        });
    }
    if (inlay.relief.kind === 'cut') facts.push({ label: 'which side up', value: sideWords(inlay) });
    if (step.clearance !== undefined) {
        facts.push({
            label: 'clearance',
            value: showLength(step.clearance.value, step.clearance.unit),
            where: step.clearance.where,
        });
    }
    if (inlay.stack !== undefined) {
        facts.push({ label: 'stands proud', value: likelyAndWorst(inlay.stack.proud) });
        facts.push({ label: 'left after sanding', value: likelyAndWorst(inlay.stack.left) });
    }
    if (inlay.fit !== undefined) {
        const how = inlay.fit.bottoms ? 'reaches the floor' : `jams ${showLength(inlay.fit.insertion)} in`;
        facts.push({ label: 'fit', value: `${how}; seam ${showLength(inlay.fit.seam)}${asideWords(inlay)}` });
    }
    return facts;
}

function asideWords({ aside }: InlayPlan): string {
    return aside === undefined ? '' : `, up to ${showLength(asideAtEdge(aside))} more, as far as set-ups may be off`;
}

/** Of a part that was cut out: how it goes in, and on what it lies meanwhile. */
function sideWords({ relief, pocket, turnedOver, veneer, pocketLaser }: InlayPlan): string {
    const side = turnedOver
        ? `turned over: the face of ${relief.name} goes down`
        : `face up: ${relief.name} lies as it came from the laser`;
    const short = (pocketLaser.depth?.value ?? 0) - (veneer?.value ?? Number.POSITIVE_INFINITY);
    if (pocket.kind !== 'cut') return side;
    return short > 0.005
        ? `${side}; on ${showLength(short)} of packing, which makes it flush`
        : `${side}; on a flat plate that glue does not hold to`;
}

/** Root of squares, and what it is when every tolerance is at its bad end; one range where the two are the same. */
function likelyAndWorst({ likely, worst }: { readonly likely: Interval; readonly worst: Interval }): string {
    const expected = rangeWords(likely);
    const atWorst = rangeWords(worst);
    if (spread(worst) < 5e-4 || expected === atWorst) return showLengthInterval(likely);
    // One figure for both sides is that of the wider one, and rounded: it must not seem to reach past the worst case.
    const half = spread(likely) + shownStep;
    const plain = !isLopsided(likely) && likely.value - half >= worst.low && likely.value + half <= worst.high;
    return plain
        ? `${showLengthInterval(likely)} (at worst ${atWorst})`
        : `${showLength(likely.value)} (likely ${expected}, at worst ${atWorst})`;
}

/** Two figures of a sum, each rounded to a hundredth, may together be off by this, mm. */
const shownStep = 0.01;

function rangeWords({ low, high }: Interval): string {
    return `${showLength(low)} to ${showLength(high)}`;
}

function woodFacts({ wood }: StepPlan): Fact[] {
    const facts: Fact[] = [];
    if (wood?.contrast !== undefined) {
        const { difference, ground } = wood.contrast;
        facts.push({ label: 'contrast', value: `${showNumber(difference, 0)} against ${ground} (CIEDE2000)` });
    }
    if (wood?.movement !== undefined) {
        const { movement, direction } = wood.movement;
        facts.push({ label: 'moves apart', value: `${showLength(movement)} across the ${direction} over a year indoors` });
    }
    return facts;
}

function benchFacts({ step, sand }: StepPlan): Fact[] {
    switch (step.kind) {
        case 'sand':
            return sandFacts(step, sand);
        case 'seal':
        case 'finish': {
            const dry = step.kind === 'seal' ? step.sealer?.dry : step.coat?.dry;
            const coats = { label: 'coats', value: showNumber(step.coats, 0) };
            return dry === undefined ? [coats] : [coats, { label: 'dry', value: showTime(dry.value) }];
        }
        case 'check':
            return [
                ...(step.depth === undefined ? [] : [{ label: 'depth should be', value: measured(step.depth) }]),
                ...(step.width === undefined ? [] : [{ label: 'width should be', value: measured(step.width) }]),
                ...(step.tone === undefined ? [] : [{ label: 'tone should be', value: showQuantity(step.tone) }]),
                ...(step.through === undefined ? [] : [{ label: 'look whether it came', value: 'through' }]),
            ];
        case 'flip':
            return [{ label: 'change places', value: step.axis === 'upright' ? 'left and right' : 'far and near side' }];
        case 'wait':
            return step.reason === undefined ? [] : [{ label: 'for', value: step.reason }];
        default:
            return [];
    }
}

function sandFacts({ flush, take, grits }: Sand, sand: StepPlan['sand']): Fact[] {
    const facts: Fact[] = [];
    if (flush) facts.push({ label: 'first', value: 'flush with the face' });
    if (sand !== undefined && sand.below.value > 0) {
        const where = take === undefined ? {} : { where: take.where };
        facts.push({ label: flush ? 'then take' : 'take', value: showLengthInterval(sand.below, take?.unit), ...where });
    }
    if (grits.length > 0) facts.push({ label: 'grits', value: grits.map((grit) => grit.name).join(', ') });
    if (sand !== undefined && sand.takes.length > 1)
        facts.push({ label: 'of it each', value: sand.takes.map((each) => showLength(each, take?.unit)).join(', ') });
    return facts;
}

function measured(quantity: { value: number; tolerance: number }): string {
    return showLengthInterval({
        value: quantity.value,
        low: quantity.value - quantity.tolerance,
        high: quantity.value + quantity.tolerance,
    });
}

/** What to mind in this step. */
export function cautionFacts({ cautions = [], advice = [] }: StepPlan): Fact[] {
    const fact = (label: string) => (value: string) => ({ label, value });
    return [...advice.map(fact('mind')), ...cautions.map(fact('caution'))];
}

function timeFacts({ times }: StepPlan): Fact[] {
    const facts: Fact[] = [];
    if (times.machine > 0) facts.push({ label: 'machine', value: showTime(times.machine) });
    if (times.attended > 0) facts.push({ label: 'hands', value: showTime(times.attended) });
    if (times.waiting > 0) facts.push({ label: 'wait', value: showTime(times.waiting) });
    return facts;
}
