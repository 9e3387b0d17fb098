import { area } from '../geometry/measure';
import type { LaserPlan } from '../plan/laser-plan';
import type { FillPlan, InlayPlan, Plan, StepPlan } from '../plan/plan';
import { missingBasis } from '../plan/through-words';
import type { DrawnParts } from './drawn-parts';
import { type Figure, range, word, worked } from './figure';

/** What follows from a step as it is written: what the machine is set to, what comes out, how long it takes. */
export function outcomes(step: StepPlan, plan: Plan, drawn: DrawnParts | undefined): Figure[] {
    const { laser, fill, inlay, times, unplanned } = step;
    return [
        ...(unplanned === undefined ? [] : [word('not worked out', unplanned)]),
        ...(laser === undefined ? [] : laserOutcomes(laser)),
        ...(laser === undefined ? [] : (drawn?.woodLeft(step, plan) ?? [])),
        ...(fill === undefined ? [] : fillOutcomes(fill)),
        ...(inlay === undefined ? [] : inlayOutcomes(inlay)),
        ...time('machine', times.machine),
        ...time('hands', times.attended),
        ...time('wait', times.waiting),
    ];
}

const ofFitAndDepth: ReadonlySet<string> = new Set([
    'not worked out',
    'tone',
    'depth',
    'depth asked for',
    'floor left',
    'thinnest wall',
    'cut free',
    'settings from',
    'fill depth',
    'seam',
    'goes in',
    'side up',
    'fit',
    'stands proud',
    'veneer left',
    'veneer left at worst',
]);

/** Of the outcomes those that say how deep a step comes out and how its halves go together: no settings, amounts or times. */
export function fitAndDepth(step: StepPlan, plan: Plan, drawn: DrawnParts): Figure[] {
    return outcomes(step, plan, drawn).filter(({ label }) => ofFitAndDepth.has(label));
}

function laserOutcomes(laser: LaserPlan): Figure[] {
    const { settings, step, depth } = laser;
    const figures: Figure[] = [];
    if (laser.tone !== undefined) figures.push(worked('tone', laser.tone, 'ratio'));
    else if (laser.through) figures.push(word('depth', 'through'));
    else if (depth !== undefined) figures.push(range('depth', depth));
    if (settings !== undefined) {
        const { power, powerRatio } = settings;
        figures.push(Number.isFinite(powerRatio) ? worked('power', powerRatio, 'ratio') : worked('power', power, 'power'));
        figures.push(worked('speed', settings.speed, 'speed'));
        if (step.kind === 'engrave') figures.push(worked('pitch', settings.pitch, 'length'));
        figures.push(worked('passes', settings.passes, 'count'));
        figures.push(word('settings from', settings.guess ? `a guess, ${missingBasis(laser.step)}` : 'a coupon'));
        if (!settings.reached) figures.push(word('depth asked for', 'not reached'));
    }
    if (laser.kerf !== undefined) figures.push(range('kerf', laser.kerf.face));
    if (laser.focus !== undefined) figures.push(worked('heights of the focus', new Set(laser.focus).size, 'count'));
    for (const { dots } of laser.pictures ?? []) figures.push(worked('dots', dots, 'count'));
    if (step.kind === 'engrave') figures.push(worked('area', laser.area, 'area'), worked('scan lines', laser.scanAngle, 'angle'));
    else figures.push(worked('edge length', laser.perimeter, 'length'));
    return figures;
}

function fillOutcomes({ depth, mix, pours, cups }: FillPlan): Figure[] {
    const figures = [range('fill depth', depth), worked('volume', mix.volume, 'volume')];
    if (pours.count > 1) figures.push(worked('pours', pours.count, 'count'), worked('each pour', pours.each, 'length'));
    if (cups.count > 1) figures.push(worked('cups', cups.count, 'count'));
    if (mix.parts !== undefined) {
        const dimension = mix.parts.by === 'volume' ? 'volume' : 'mass';
        figures.push(worked('resin', mix.parts.resin, dimension), worked('hardener', mix.parts.hardener, dimension));
    }
    if (mix.pigment !== undefined) figures.push(worked('pigment', mix.pigment, 'mass'));
    if (mix.powder !== undefined) figures.push(worked('metal powder', mix.powder, 'mass'));
    return figures;
}

function inlayOutcomes({ relief, turnedOver, fit, stack, collides, empty, marks }: InlayPlan): Figure[] {
    const figures: Figure[] = [];
    // What was burnt away around its parts goes in face down, always.
    if (relief.kind === 'cut') figures.push(word('side up', turnedOver ? 'the back' : 'the face'));
    if (fit !== undefined) {
        figures.push(worked('seam', fit.seam, 'length'), worked('goes in', fit.insertion, 'length'));
        figures.push(word('fit', fit.bottoms ? 'reaches the floor' : 'jams before the floor'));
    }
    if (stack !== undefined) {
        figures.push(range('stands proud', stack.proud.likely), range('veneer left', stack.left.likely));
        figures.push(worked('veneer left at worst', stack.left.worst.low, 'length'));
    }
    if (marks !== undefined) figures.push(worked('marks', marks.placed, 'count'));
    figures.push(worked('veneer on the board', area(collides), 'area'), worked('pocket left empty', area(empty), 'area'));
    return figures;
}

function time(label: string, seconds: number): Figure[] {
    return seconds > 0 ? [worked(label, seconds, 'time')] : [];
}
