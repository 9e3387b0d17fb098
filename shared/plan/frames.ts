import { subtract } from '../geometry/boolean';
import { emptyRegion, type Region } from '../geometry/region';
import { scorchDepth } from '../piece/column';
import { add, exactly, type Interval } from '../quantity/interval';
import type { LaserPlan } from './laser-plan';
import type { Memo } from './memo';
import type { Content, Mark, Piece } from './piece';
import type { BlankPlan, StepPlan } from './plan';

/** The pieces before the first step and after each one. */
export function planFrames(blanks: readonly BlankPlan[], steps: readonly StepPlan[], memo: Memo): Piece[][] {
    const frames: Piece[][] = [blanks.map(start)];
    for (const [index, step] of steps.entries()) {
        const before = frames[frames.length - 1]!;
        frames.push(after(before, step, index, memo));
    }
    return frames;
}

function start(blank: BlankPlan): Piece {
    return {
        blank: blank.name,
        face: exactly(0),
        masked: false,
        sealed: 0,
        finished: 0,
        sanded: false,
        peeled: blank.blank.backing === 'none',
        marks: [],
    };
}

function after(before: readonly Piece[], plan: StepPlan, index: number, memo: Memo): Piece[] {
    const { step } = plan;
    const change = (name: string | undefined, how: (piece: Piece) => Piece): Piece[] =>
        before.map((piece) => (piece.blank === name ? how(piece) : piece));
    switch (step.kind) {
        case 'engrave':
        case 'cut':
            return plan.laser === undefined ? [...before] : change(plan.blank, (piece) => burnt(piece, plan, index, memo));
        case 'seal':
            return change(plan.blank, (piece) => ({
                ...piece,
                sealed: piece.sealed + step.coats,
                marks: piece.marks.map((mark) => ({ ...mark, sealed: true })),
            }));
        case 'finish':
            return change(plan.blank, (piece) => ({ ...piece, finished: piece.finished + step.coats }));
        case 'mask':
            return change(plan.blank, (piece) => ({ ...piece, masked: true }));
        case 'peel':
            // Peeling what lies glued in another blank bares that blank's inlay.
            return change(plan.blank, (piece) => ({ ...piece, masked: false, peeled: true }));
        case 'sand':
            return change(plan.blank, (piece) => sanded(piece, plan.sand?.below ?? exactly(0), step.flush));
        case 'fill':
            return plan.fill === undefined ? [...before] : change(plan.blank, (piece) => filled(piece, plan, index));
        case 'inlay':
            return plan.inlay === undefined ? [...before] : inlaid(before, plan, index);
        default:
            return [...before];
    }
}

function burnt(piece: Piece, plan: StepPlan, index: number, memo: Memo): Piece {
    const laser = plan.laser!;
    const only = laser.tone !== undefined;
    const depth = laser.depth ?? exactly(0);
    const base: Omit<Mark, 'region'> = {
        step: index,
        kind: laser.step.kind === 'cut' ? 'cut' : laser.through ? 'through' : only ? 'toned' : 'pocket',
        depth: only ? piece.face : add(depth, piece.face),
        tone: laser.tone ?? 1,
        sealed: false,
    };
    const whole = laser.whole ?? laser.region;
    const mark: Mark = { ...base, region: whole };
    const dotted = (laser.pictures ?? []).map(({ tones }): Mark => ({ ...base, region: tones[0] ?? emptyRegion, tones }));
    // A deeper burn through an earlier mark takes it away there, with whatever lay in it.
    const earlier =
        only || laser.step.kind === 'cut'
            ? piece.marks
            : piece.marks.map((old) => {
                  const left = (region: Region): Region => {
                      const key = `${memo.keyOf(region)} ${memo.keyOf(whole)}`;
                      return memo.get('burnt-over', key, () => subtract(region, whole));
                  };
                  return { ...old, region: left(old.region), ...(old.tones === undefined ? {} : { tones: old.tones.map(left) }) };
              });
    const made = dotted.length > 0 && whole.rings.length === 0 ? dotted : [mark, ...dotted];
    return {
        ...piece,
        marks: [...earlier, ...made, ...registrationMarks(laser, index, { through: base.depth, face: piece.face })],
    };
}

function registrationMarks(
    laser: LaserPlan,
    step: number,
    { through, face }: { readonly through: Interval; readonly face: Interval },
): Mark[] {
    return (laser.marks ?? []).map(({ region, tone }) => ({
        step,
        kind: tone === undefined ? 'through' : 'toned',
        region,
        depth: tone === undefined ? through : face,
        tone: tone ?? 1,
        sealed: false,
        registration: true,
    }));
}

function filled(piece: Piece, plan: StepPlan, index: number): Piece {
    const { fill, step } = plan;
    if (fill === undefined || step.kind !== 'fill' || step.resin === undefined) return piece;
    const content: Content = {
        kind: 'resin',
        step: index,
        name: step.resin.name,
        colour: step.resin.colour,
        opacity: step.resin.opacity?.value ?? 0.85,
        proud: fill.depth.value * (step.overfill?.value ?? 0.1),
    };
    return { ...piece, marks: piece.marks.map((mark) => (made(mark, fill.pocket.index) ? { ...mark, content } : mark)) };
}

function inlaid(before: readonly Piece[], plan: StepPlan, index: number): Piece[] {
    const inlay = plan.inlay!;
    const content: Content = {
        kind: 'inlay',
        step: index,
        from: inlay.reliefLaser.blank,
        region: inlay.fits,
        collides: inlay.collides,
        film: inlay.film.value,
        veneer: inlay.veneer?.value ?? 0,
        proud: inlay.stack?.proud.worst.value ?? 0,
    };
    return before.map((piece) => {
        if (piece.blank === inlay.reliefLaser.blank && piece.blank !== inlay.pocketLaser.blank) {
            return { ...piece, inside: inlay.pocketLaser.blank };
        }
        if (piece.blank !== inlay.pocketLaser.blank) return piece;
        return { ...piece, marks: piece.marks.map((mark) => (made(mark, inlay.pocket.index) ? { ...mark, content } : mark)) };
    });
}

function made(mark: Mark, step: number): boolean {
    return mark.step === step && mark.registration !== true;
}

/** Sanding takes the face down, levels what stands proud, and takes shallow marks away with the wood. */
function sanded(piece: Piece, below: Interval, flush: boolean): Piece {
    const face = add(piece.face, below);
    const levels = flush || below.value > 0;
    const marks = piece.marks
        .filter(
            (mark) =>
                mark.kind === 'cut' ||
                mark.kind === 'through' ||
                mark.depth.value + (mark.kind === 'toned' ? scorchDepth : 0) > face.value + hair,
        )
        .map((mark) => {
            if (!levels || mark.content === undefined) return mark;
            return { ...mark, content: { ...mark.content, proud: Math.min(mark.content.proud, 0) } };
        });
    return { ...piece, face, marks, sealed: below.value > 0 ? 0 : piece.sealed, finished: 0, sanded: true, masked: false };
}

/** Sums of what is sanded off are good to this, mm. */
const hair = 1e-9;
