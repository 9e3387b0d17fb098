import { lineWidth } from '../burn/beam';
import { ladderFit } from '../burn/clearance-ladder';
import type { CutLaw } from '../burn/cut-law';
import { doseFor } from '../burn/dose';
import { isCredible, lawOfPiece, lawOfRest, readingError, solveRest, withRest } from '../burn/go-on';
import { guessLaw } from '../burn/guess';
import { rangeUse } from '../burn/interval-words';
import { type KerfWidth, kerfRowsOf, kerfWidth } from '../burn/kerf-width';
import { type DepthLaw, predict, predictOnBoard } from '../burn/law';
import { wattsOf } from '../burn/power-curve';
import { couponFor } from '../burn/run-rows';
import { settlingSquare } from '../burn/settling-square';
import { type Given, isSure, type Solution, solveDepth, type Wish } from '../burn/solve';
import { solveCut } from '../burn/solve-cut';
import { USUAL_SURE } from '../burn/surely';
import { darkestJudged } from '../burn/tone';
import { type Side, sideOf } from '../piece/lie';
import type { Interval } from '../quantity/interval';
import { exactly } from '../quantity/interval';
import type { Quantity } from '../quantity/quantity';
import { followsOutline } from '../recipe/follows-outline';
import type { Recipe } from '../recipe/recipe';
import type { Cut, Engrave, Mask, Pace, Peel } from '../recipe/step';
import type { Laser } from '../recipe/stock';
import { contentKey } from './content-key';
import { cutLaw, depthLaw } from './depth-law';
import type { Breakthrough, GoesOn, LaserSettings } from './laser-plan';
import { lieBefore } from './lies';
import type { Memo } from './memo';
import type { BlankPlan } from './plan';

/** What the laser is set to, and the depth or tone that follows. */
export interface Solved {
    readonly settings?: LaserSettings;
    readonly depth?: Interval;
    readonly through: boolean;
    readonly breakthrough?: Breakthrough;
    readonly tone?: number;
    readonly kerf?: KerfWidth;
    readonly fits?: number;
    readonly goesOn?: GoesOn;
}

/**
 * Solves a step's wish into settings, or predicts the depth from settings that are written. A depth
 * that is asked for and reached keeps the wish as its value; the interval is the prediction's.
 */
export function solveSettings(step: Engrave | Cut, blank: BlankPlan, recipe: Recipe, memo: Memo): Solved {
    const { laser } = recipe;
    if (step.kind === 'cut') return solveCutting(step, blank, recipe, memo);
    const thickness = blank.thickness;
    const through = step.depth !== undefined && 'through' in step.depth;
    const wish = wishOf(step, thickness, through);
    const given = givenOf(step, laser);
    const line = followsOutline(step);
    const law = depthLaw(recipe, blank.blank.sheet, memo);
    const pace = step.pace?.value;
    const key = contentKey(memo.keyOf(law), laser, wish, given, line, pace);
    const solution = memo.get('settings', key, () =>
        wish === undefined
            ? predictOnly(law, laser, given, line)
            : solveDepth(law, laser, { ...wish, ...(line && { line }), ...(pace !== undefined && { pace }) }, given),
    );
    const going = goOn(step, { wish, given, pace, law, first: solution, laser, ...(through && { sheet: blank }) }, memo);
    if (going !== undefined) return going;
    const settings =
        solution === undefined ? undefined : withSquare(settingsOf(solution, guessed(law, wish), law, wish), law, wish, laser);
    if (through) {
        const depth = thickness ?? solution?.depth;
        return {
            through,
            ...(settings === undefined ? {} : { settings }),
            ...(depth === undefined ? {} : { depth: exactly(depth.value) }),
            ...breakthroughOf(solution, wish !== undefined && 'depth' in wish ? wish.sure : undefined, blank),
        };
    }
    if (wish !== undefined && 'tone' in wish) {
        const taped = settings && { ...settings, ...(isTaped(recipe, step) && { throughTape: true as const }) };
        return { through, tone: wish.tone, depth: exactly(0), ...(taped === undefined ? {} : { settings: taped }) };
    }
    const depth = depthOfWish(wish, solution);
    return { through, ...(settings === undefined ? {} : { settings }), ...(depth === undefined ? {} : { depth }) };
}

/** What gives the depth of a step in so many passes, whatever is written of them; what is written else is kept. */
export function solveWithPasses(
    step: Engrave,
    passes: number,
    blank: BlankPlan,
    recipe: Recipe,
    memo: Memo,
): Solution | undefined {
    const { laser } = recipe;
    const wish = wishOf(step, blank.thickness, step.depth !== undefined && 'through' in step.depth);
    if (wish === undefined || !('depth' in wish)) return undefined;
    const law = depthLaw(recipe, blank.blank.sheet, memo);
    const given = { ...givenOf(step, laser), passes };
    const line = followsOutline(step);
    return memo.get('settings', contentKey(memo.keyOf(law), laser, wish, given, line, 'passes'), () =>
        solveDepth(law, laser, { ...wish, ...(line && { line }) }, given),
    );
}

/** Less than this is not burnt for, mm: a light pass takes more. @commonPractice */
const NOTHING_LEFT = 0.015;

interface GoingOn {
    readonly wish: Wish | undefined;
    readonly given: Given;
    readonly pace: Pace | undefined;
    readonly law: DepthLaw;
    /** With what the first passes were burnt: the settings for the whole depth. */
    readonly first: Solution | undefined;
    readonly laser: Laser | undefined;
    /** What is to be gone through; absent of a pocket with a floor. */
    readonly sheet?: BlankPlan;
}

/** What is left of a burn whose depth was measured after its first passes, by the law as that depth moves it; undefined of any other. */
function goOn({ reached }: Engrave, { wish, given, pace, law, first, laser, sheet }: GoingOn, memo: Memo): Solved | undefined {
    if (reached === undefined || first === undefined || wish === undefined || !('depth' in wish)) return undefined;
    const { passes } = reached;
    const { power, speed, pitch } = first;
    const soFar = { settings: { power, speed, pitch, passes }, depth: reached.depth.value, tolerance: reached.depth.tolerance };
    const ofPiece = memo.get('law-of-piece', contentKey(memo.keyOf(law), soFar), () => lawOfPiece(law, soFar));
    const left = wish.depth - soFar.depth;
    const rest = lawOfRest(ofPiece, passes);
    const { passes: _, ...free } = given;
    const { sure } = wish;
    const unsure = sure === undefined ? 0 : readingError(ofPiece, soFar, sure);
    const solution =
        left + unsure < NOTHING_LEFT
            ? undefined
            : memo.get('settings', contentKey(memo.keyOf(rest), laser, left, unsure, wish, free, pace, 'rest'), () => {
                  const wanted = { ...wish, depth: Math.max(NOTHING_LEFT, left), ...(pace !== undefined && { pace }) };
                  return solveRest(rest, laser, wanted, free, { unsure, whole: wish.depth });
              });
    const depth = withRest(ofPiece, soFar, solution?.depth ?? exactly(0));
    const all = passes + (solution?.passes ?? 0);
    const goesOn: GoesOn = {
        reached: soFar.depth,
        passes,
        expected: predict(law, soFar.settings) ?? exactly(0),
        credible: isCredible(law, soFar),
        left: Math.max(0, left),
        whole: {
            law: { threshold: ofPiece.threshold, energy: ofPiece.energy, fade: ofPiece.fade },
            dose: doseFor(ofPiece, depth.value, all),
            passes: all,
        },
    };
    const settings = solution && { ...settingsOf(solution, law.guess, rest, wish), gives: depth };
    const going = { goesOn, ...(settings !== undefined && { settings }) };
    if (sheet?.thickness === undefined) return { through: false, ...going, depth };
    const whole = solution && { ...solution, depth, surely: soFar.depth + (solution.surely ?? 0) };
    return { through: true, ...going, depth: exactly(sheet.thickness.value), ...breakthroughOf(whole, sure, sheet) };
}

/** Whether tape lies on the face that a step engraves: on after the last peeling of it before. */
function isTaped({ steps }: Recipe, { index, blank }: Engrave): boolean {
    const sideAt = (at: number): Side => sideOf(lieBefore(steps, at, blank.value ?? ''));
    const onIt = steps.filter(
        (step): step is Mask | Peel =>
            (step.kind === 'mask' || step.kind === 'peel') &&
            step.index < index &&
            step.blank.value === blank.value &&
            sideAt(step.index) === sideAt(index),
    );
    return onIt.at(-1)?.kind === 'mask';
}

/** Settings of a cut come from cut tests, or an estimate: a single line through the whole sheet is like no square. */
function solveCutting(step: Cut, blank: BlankPlan, recipe: Recipe, memo: Memo): Solved {
    const { laser } = recipe;
    const { thickness } = blank;
    const law = cutLaw(recipe, blank.blank.sheet, memo);
    const given = givenOf(step, laser);
    const sure = sureOf(step.sure);
    const solution = memo.get('settings', contentKey(memo.keyOf(law), laser, thickness?.high, sure, given), () =>
        cutOf(law, laser, { thickness: thickness?.high, sure }, given),
    );
    return {
        through: true,
        ...(solution === undefined ? {} : { settings: settingsOf(solution, law.guess) }),
        ...(thickness === undefined ? {} : { depth: exactly(thickness.value) }),
        ...kerfOf(step, blank, recipe, solution),
        // Who has written all settings knows of cuts that the tool was not told of: the guess says nothing for or against them.
        ...(law.guess && isHeld(step) ? {} : breakthroughOf(solution, sure, blank)),
    };
}

/** Of a cut whose settings are not known, the width that a middling one has. @commonPractice */
const middling = { power: 40, speed: 10, passes: 1 };

function kerfOf(
    step: Cut,
    { blank: { sheet } }: BlankPlan,
    recipe: Recipe,
    settings: Solution | undefined,
): Pick<Solved, 'kerf' | 'fits'> {
    const { laser } = recipe;
    const coupon = couponFor(recipe, sheet?.name);
    const beam = { spot: lineWidth(laser), threshold: guessLaw(sheet?.wood, laser).threshold };
    const kerf = kerfWidth(beam, kerfRowsOf(coupon, laser), settings ?? middling, step.kerf);
    const fits = ladderFit(coupon, laser, beam, kerf);
    return { kerf, ...(fits !== undefined && { fits }) };
}

function isHeld({ power, speed, passes }: Cut): boolean {
    return power !== undefined && speed !== undefined && passes !== undefined;
}

/** Of a sheet whose thickness is not known, written settings are kept, and nothing is worked out. */
function cutOf(
    law: CutLaw,
    laser: Laser | undefined,
    { thickness, sure }: { thickness: number | undefined; sure: number },
    given: Given,
): Solution | undefined {
    if (thickness === undefined && (given.power === undefined || given.speed === undefined)) return undefined;
    return solveCut(
        law,
        laser,
        { thickness: thickness ?? 1, sure },
        { ...(thickness === undefined ? { passes: 1 } : {}), ...given },
    );
}

/** Settings for a tone on a blank, all of them free. */
export function solveTone(tone: number, blank: BlankPlan, recipe: Recipe, memo: Memo): LaserSettings | undefined {
    const law = depthLaw(recipe, blank.blank.sheet, memo);
    return memo.get('settings', contentKey(memo.keyOf(law), recipe.laser, { tone }, 'marks'), () => {
        const solution = solveDepth(law, recipe.laser, { tone });
        return solution === undefined ? undefined : settingsOf(solution, guessed(law, { tone }), law, { tone });
    });
}

/** Nothing that was measured stands behind the wish: neither squares judged by tone nor by depth. */
function guessed(law: DepthLaw, wish: Wish | undefined): boolean {
    return law.guess && !(wish !== undefined && 'tone' in wish && law.tone !== undefined);
}

function wishOf(step: Engrave, thickness: Interval | undefined, through: boolean): Wish | undefined {
    if (through && thickness === undefined) return undefined;
    if (through)
        return {
            depth: thickness!.high,
            sure: sureOf(step.depth !== undefined && 'through' in step.depth ? step.depth.sure : undefined),
        };
    if (step.depth !== undefined && !('through' in step.depth)) {
        return { depth: step.depth.value, ...(step.depth.tolerance > 0 ? { depthTolerance: step.depth.tolerance } : {}) };
    }
    return step.tone === undefined ? undefined : { tone: step.tone.value };
}

/** The probability that a recipe asks for, held to what can be one. */
function sureOf(written: Quantity | undefined): number {
    const asked = written?.value;
    return asked !== undefined && asked >= 0.5 && asked <= 0.9999 ? asked : USUAL_SURE;
}

function breakthroughOf(
    solution: Solution | undefined,
    sure: number | undefined,
    { thickness, blank }: BlankPlan,
): Pick<Solved, 'breakthrough'> {
    if (solution?.surely === undefined || sure === undefined || thickness === undefined) return {};
    const breakthrough: Breakthrough = {
        asked: sure,
        thickest: thickness.high,
        surely: solution.surely,
        certain: isSure(solution.surely, thickness.high),
        spare: solution.depth.value - thickness.value,
        behind: blank.backing,
    };
    return { breakthrough };
}

function givenOf(step: Engrave | Cut, laser: Laser | undefined): Given {
    const power = wattsOf(step.power, laser);
    const pitch = step.kind === 'engrave' && !followsOutline(step) ? step.pitch?.value : undefined;
    return {
        ...(power === undefined ? {} : { power }),
        ...(step.speed === undefined ? {} : { speed: step.speed.value }),
        ...(pitch === undefined ? {} : { pitch }),
        ...(step.passes === undefined ? {} : { passes: step.passes.value }),
    };
}

/** Neither depth nor tone is asked for: what the written settings give. */
function predictOnly(
    law: Parameters<typeof solveDepth>[0],
    laser: Laser | undefined,
    given: Given,
    line: boolean,
): Solution | undefined {
    if (given.power === undefined || given.speed === undefined) return undefined;
    return solveDepth(law, laser, { depth: 0, ...(line && { line }) }, { passes: 1, ...given });
}

function depthOfWish(wish: Wish | undefined, solution: Solution | undefined): Interval | undefined {
    if (wish === undefined || !('depth' in wish)) return solution?.depth;
    if (solution === undefined) {
        const tolerance = wish.depthTolerance ?? 0;
        return { value: wish.depth, low: Math.max(0, wish.depth - tolerance), high: wish.depth + tolerance };
    }
    // Where the wish is met, its value stands for the depth; what cannot be reached is told by its prediction.
    const value = solution.reached ? wish.depth : solution.depth.value;
    return { value, low: Math.min(value, solution.depth.low), high: Math.max(value, solution.depth.high) };
}

/** Of settings for a depth, with the square that would say most of it. */
function withSquare(settings: LaserSettings, law: DepthLaw, wish: Wish | undefined, laser: Laser | undefined): LaserSettings {
    const settling = wish !== undefined && 'tone' in wish ? undefined : settlingSquare(law, settings, laser);
    return { ...settings, ...(settling !== undefined && { settling }), ...onBoard(law, settings) };
}

/** Where a range is for the next piece, those for the board that was measured. */
function onBoard(law: DepthLaw, settings: LaserSettings): Pick<LaserSettings, 'onBoard'> {
    if (law.pieces === undefined) return {};
    const [square, pocket] = (['square', 'pocket'] as const).map((of) => predictOnBoard(law, settings, of));
    return square === undefined || pocket === undefined ? {} : { onBoard: { square, pocket } };
}

function settingsOf(solution: Solution, guess: boolean, law?: DepthLaw, wish?: Wish): LaserSettings {
    const outside = solution.limits.includes('outside-coupon');
    return {
        power: solution.power,
        powerRatio: solution.powerRatio ?? Number.NaN,
        speed: solution.speed,
        pitch: solution.pitch,
        passes: solution.passes,
        gives: solution.depth,
        ...(law !== undefined && { givesFor: rangeUse(law, solution.depth.value, solution.passes) }),
        ...(solution.judged === undefined ? {} : { givesTone: solution.judged }),
        reached: solution.reached,
        limits: solution.limits,
        ...(outside && law?.range !== undefined && !(wish !== undefined && 'tone' in wish) && { measuredDoses: law.range }),
        ...(outside &&
            wish !== undefined &&
            'tone' in wish &&
            law?.tone !== undefined && { darkestJudged: darkestJudged(law.tone) }),
        ...(wish !== undefined && 'tone' in wish && law?.tone?.pitch !== undefined && { judgedPitch: law.tone.pitch }),
        guess,
    };
}
