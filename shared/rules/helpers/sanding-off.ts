import { showLength } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Sand } from '../../recipe/step';
import type { Figures, Proposal } from '../figures';
import { roundLength } from './ask-depth';

/** What has to come off a face for scorch and smoke to go, mm. @commonPractice */
export const leastTaken = 0.05;

/** Takes so much less off the face, as long as enough comes off for the scorch to go. */
export function sandLess(rule: string, step: Sand, byMm: number, figures: Figures): Fix[] {
    const { take } = step;
    if (take === undefined) return [];
    const less = roundLength(take.value - byMm, take.unit, 'down');
    if (less < leastTaken) return [];
    const { figure } = figures.agree(taking(rule, step, less));
    if (figure === undefined) return [];
    const text = showLength(figure, take.unit);
    const only = figure < take.value ? phrase`only ` : '';
    return [{ title: phrase`Take ${only}${text} off the face`, changes: [{ do: 'replace', where: take.where, text }] }];
}

/** Another figure for what comes off the face, to be agreed on. */
export function taking(rule: string, step: Sand, mm: number): Proposal {
    const { take, flushWhere, where } = step;
    const written = {
        tolerance: 0,
        unit: take?.unit ?? 'mm',
        dimension: 'length',
        where: take?.where ?? flushWhere ?? where,
    } as const;
    return {
        rule,
        step,
        of: 'take',
        figure: mm,
        with: (value) => [{ ...step, take: { ...written, value } }],
        grid: 0.01,
        between: [0, Number.POSITIVE_INFINITY],
    };
}

/** Takes a tenth of a millimetre off the face: enough for scorch and for registration marks. */
export function takeATenth(rule: string, step: Sand, figures: Figures): Fix[] {
    const { take, flushWhere } = step;
    const where = take?.where ?? flushWhere;
    if (where === undefined) return [];
    const { figure } = figures.agree(taking(rule, step, 0.1));
    if (figure === undefined) return [];
    const length = showLength(figure, take?.unit ?? 'mm');
    const text = take === undefined ? `flush then ${length}` : length;
    return [{ title: phrase`Take ${length} off the face`, changes: [{ do: 'replace', where, text }] }];
}
