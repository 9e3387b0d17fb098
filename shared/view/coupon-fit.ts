import { medianOf } from '../burn/distributions';
import { doseFor } from '../burn/dose';
import { type DepthLaw, type LawNote, type LawRow, measuringError, PRIOR_FREEDOM, predict, predictOnBoard } from '../burn/law';
import { darkestDose, doseForTone, onsetDose, predictTone } from '../burn/tone';
import type { ToneLaw } from '../burn/tone-law';
import { spread } from '../quantity/interval';
import { showLength, showNumber, showRatio } from '../quantity/show';
import type { MeasuredCoupon } from '../recipe/stock';
import { fitMeasured } from '../rules/coupon/examine-coupons';

/** A short fact with its name. */
interface FitFact {
    readonly label: string;
    readonly value: string;
}

/** What the fit says of one square; lengths in mm, the dose in J/mm². */
export interface FittedSquare extends Pick<LawRow, 'dose' | 'passes' | 'fitted' | 'residual' | 'studentised' | 'outlier'> {
    /** Where its row begins in the text. */
    readonly offset: number | undefined;
}

/** A coupon's fit as it is shown: plain data, since it is worked out in another thread than it is asked for. */
export interface CouponFit {
    readonly facts: readonly FitFact[];
    readonly notes: readonly string[];
    readonly squares: readonly FittedSquare[];
    /** Depth of one more square on this board by the dose of a single pass, over the doses that were measured; mm, J/mm². */
    readonly curve: readonly { readonly dose: number; readonly depth: number; readonly low: number; readonly high: number }[];
}

export function couponFit(measured: MeasuredCoupon): CouponFit {
    const { law, rows } = fitMeasured(measured);
    const squares = law.rows.map(({ dose, passes, fitted, residual, studentised, outlier }, index) => {
        const offset = rows[index]?.where?.offset;
        return { offset, dose, passes, fitted, residual, outlier, ...(studentised !== undefined && { studentised }) };
    });
    return { facts: fitFacts(law), notes: law.notes.map((note) => words[note]), squares, curve: curveOf(law) };
}

/** Doses in the curve, both ends included. */
const PLACES = 21;

function curveOf(law: DepthLaw): CouponFit['curve'] {
    const { range } = law;
    if (range === undefined) return [];
    return Array.from({ length: PLACES }, (_, i) => range.low + ((range.high - range.low) * i) / (PLACES - 1)).flatMap((dose) => {
        const predicted = predictOnBoard(law, { power: dose, speed: 1, pitch: 1, passes: 1 }, 'square');
        return predicted === undefined ? [] : [{ dose, depth: predicted.value, low: predicted.low, high: predicted.high }];
    });
}

/** What a coupon's fit says, in a maker's words: figures with their standard errors. */
function fitFacts(law: DepthLaw): FitFact[] {
    const facts: FitFact[] = [
        { label: 'threshold dose', value: withError(law.threshold, law.errors.threshold, 'J/mm²') },
        { label: 'removal energy', value: withError(law.energy, law.errors.energy, 'J/mm³') },
        { label: 'fade, each later pass takes off', value: fade(law) },
    ];
    if (law.tone !== undefined) facts.push({ label: 'tone', value: toneFact(law.tone) });
    const sure = sureness(law);
    if (sure !== undefined) facts.push({ label: '95 of 100 new squares', value: sure });
    if (law.degreesOfFreedom !== undefined)
        facts.push({ label: 'scatter of one square', value: scatter(law, law.degreesOfFreedom) });
    if (law.rSquared !== undefined && law.predictedRSquared !== undefined) {
        facts.push({
            label: 'R²',
            value: `${ratio(law.rSquared)}; each square predicted by the others: ${ratio(law.predictedRSquared)}`,
        });
    }
    if (law.degreesOfFreedom !== undefined) facts.push({ label: 'does the line fit', value: fitsFact(law) });
    if (law.range !== undefined) {
        const { low, high } = law.range;
        facts.push({ label: 'measured from', value: `${showNumber(low, 2)} to ${showNumber(high, 2)} J/mm² a pass` });
    }
    const spare = law.degreesOfFreedom === undefined ? '' : `, ${law.degreesOfFreedom} more than the fit needs`;
    facts.push({ label: 'squares', value: `${law.rows.length}${spare}` });
    return facts;
}

const words: Readonly<Record<LawNote, string>> = {
    'no-coupon': 'Nothing is measured: all of this is a guess from the wood’s density.',
    'no-density': 'The wood’s density is not known either.',
    combined: 'Too few rows to stand alone: they are weighed against a guess from the wood’s density.',
    'few-rows': 'Few rows: the intervals are wide.',
    'doses-alike': 'The doses are too much alike to tell where burning begins.',
    'no-depth': 'No square took anything off.',
    'falls-with-dose': 'The squares with more dose came out shallower.',
    'threshold-at-zero': 'The line would begin below zero, so it is held there.',
    'fade-held': 'What later passes take off came out beyond belief, so it is held at its limit.',
    'fade-assumed': 'The rows do not tell what later passes take off: they count as the first.',
    'not-converged': 'The fit of these rows did not converge: what is shown leans on a guess from the wood’s density.',
    'rows-left-out': 'Some rows are left out: their figures cannot be used, or there are more than 500.',
    bent: 'Passes take less off the stronger they are: a bent line foresees squares that are left out better than a straight one. Ranges hold what both say.',
    'first-unlike':
        'Later passes take alike, and other than the first: that foresees squares that are left out better than passes which take less and less.',
    'off-law': 'Squares burnt alike agree, but lie off the line: wood does not follow it here. Ranges are wider for that.',
    outliers: 'Some squares do not go with the others: up to every fifth is left out.',
};

function withError(value: number, error: number, unit: string): string {
    if (!(error > 0)) return `${showNumber(value, 3)} ${unit} (held)`;
    const digits = Math.min(6, Math.max(2, 1 - Math.floor(Math.log10(error))));
    return `${showNumber(value, digits)} ± ${showNumber(error, digits)} ${unit}`;
}

function fade({ fade: ratioOfPass, errors, fadeAssumed, notes, laterAlike }: DepthLaw): string {
    const share = showRatio(ratioOfPass);
    if (notes.includes('fade-held')) return `${share} of the pass before it (held)`;
    if (fadeAssumed > 0) return `as much as the first (taken for granted, ± ${showRatio(fadeAssumed)})`;
    return `${showNumber(100 * ratioOfPass, 1)} ± ${showNumber(100 * errors.fade, 1)} % of the ${laterAlike === true ? 'first pass' : 'pass before it'}`;
}

/** The prediction interval in the middle of what was measured. */
function sureness(law: DepthLaw): string | undefined {
    const depths = law.rows.map((row) => row.fitted).filter((depth) => depth > 0);
    if (depths.length === 0) return undefined;
    const depth = medianOf(depths);
    const dose = doseFor(law, depth, 1);
    const predicted = predict(law, { power: dose, speed: 1, pitch: 1, passes: 1 });
    return predicted && `lie within ± ${showLength(spread(predicted))} at ${showLength(depth)}`;
}

/** How far squares lie off the line by reading and by place, and how much of that figure was seen in them. */
function scatter(law: DepthLaw, degreesOfFreedom: number): string {
    const depth = medianOf(law.rows.map((row) => row.depth));
    const seen = degreesOfFreedom / (degreesOfFreedom + PRIOR_FREEDOM);
    const error = Math.sqrt(law.variance) * measuringError(depth, law.measuring);
    const usual = showLength(measuringError(depth, law.measuring));
    return `${showLength(error)} at ${showLength(depth)} (one standard error), to ${showRatio(seen)} from these squares, to ${showRatio(1 - seen)} from the usual ${usual}`;
}

function toneFact(tone: ToneLaw): string {
    const onset = onsetDose(tone);
    const darkest = darkestDose(tone);
    const from = onset > 0 ? `begins at ${showNumber(onset, 2)}, ` : '';
    const middle = predictTone(tone, doseForTone(tone, tone.rises.tone / 2));
    const spread = showRatio((middle.high - middle.low) / 2);
    const squares = `${tone.rows.length} ${tone.rows.length === 1 ? 'square' : 'squares'}`;
    const then = tone.paler.length > 0 ? 'paler again beyond' : 'not known beyond';
    return `${from}${showRatio(tone.rises.tone)} at ${showNumber(darkest, 2)} J/mm², ${then}; half way a new square lies within ± ${spread} (${squares})`;
}

/** What repeated squares say of the law itself. */
function fitsFact({ fits, notes }: DepthLaw): string {
    if (fits === undefined) return 'not known: burn two or three of the squares a second time';
    const chance = `F ${showNumber(fits.ratio, 1)} with ${fits.between} and ${fits.within} degrees of freedom, by chance in ${showRatio(fits.probability)}`;
    return notes.includes('off-law') ? `no (${chance})` : `nothing against it in squares burnt twice (${chance})`;
}

/** Rounded down: a fit that is not perfect never looks so. */
function ratio(value: number): string {
    return showNumber(Math.floor(value * 1e4) / 1e4, 4);
}
