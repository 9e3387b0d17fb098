import { showNumber } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Engrave } from '../../recipe/step';
import type { Figures } from '../figures';

/** Asks for another distance of the scan lines, mm, that serves all who judge it. */
export function askPitch(rule: string, step: Engrave, mm: number, figures: Figures): Fix[] {
    const { pitch } = step;
    const written = { tolerance: 0, unit: 'mm', dimension: 'length', where: pitch?.where ?? step.where } as const;
    const { figure } = figures.agree({
        rule,
        step,
        of: 'pitch',
        figure: Number(mm.toFixed(mm < 0.01 ? 4 : 2)),
        with: (value) => [{ ...step, pitch: { ...written, value } }],
        grid: 0.01,
        between: [Math.min(mm, 0.01), Number.POSITIVE_INFINITY],
    });
    if (figure === undefined) return [];
    const text = phrase`${showNumber(figure, figure < 0.01 ? 4 : 2)} mm`;
    return [
        {
            title: phrase`Scan at a pitch of ${text}`,
            changes: [
                pitch === undefined
                    ? { do: 'add', block: step.whole, statement: `pitch ${text}` }
                    : { do: 'replace', where: pitch.where, text },
            ],
        },
    ];
}
