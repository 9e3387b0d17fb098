import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import type { Figures } from '../figures';
import { settingsHeld } from './settings-held';

/** More passes than this are taken for a slip of the pen. @commonPractice */
const maxPasses = 60;

/**
 * Asks for another number of passes, one that serves all who judge it; no fix where settings are held, since more passes would
 * only dig deeper.
 */
export function askPasses(rule: string, step: Engrave, wanted: number, figures: Figures): { passes?: number; fixes: Fix[] } {
    const { passes, power, speed } = step;
    if (passes === undefined || settingsHeld(step) || (power !== undefined && speed !== undefined)) return { fixes: [] };
    const { figure } = figures.agree({
        rule,
        step,
        of: 'passes',
        figure: wanted,
        with: (value) => [{ ...step, passes: { ...passes, value } }],
        grid: 1,
        between: [1, maxPasses],
    });
    if (figure === undefined) return { fixes: [] };
    const title = phrase`Take ${figure} pass${figure === 1 ? '' : 'es'}`;
    return { passes: figure, fixes: [{ title, changes: [{ do: 'replace', where: passes.where, text: `passes ${figure}` }] }] };
}
