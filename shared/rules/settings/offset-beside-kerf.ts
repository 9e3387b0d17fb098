import { isEmpty } from '../../geometry/measure';
import type { LaserPlan } from '../../plan/laser-plan';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** An offset of a fifth to four fifths of the kerf was meant to be half of it. @commonPractice */
const LEAST = 0.2;
const MOST = 0.8;

const page: Page = {
    id: 'offset-beside-kerf',
    title: 'Offset beside the kerf',
    severities: ['warning'],
    quickFix: 'always',
    condition:
        'A cut has an `offset` of about half its kerf, and its beam runs half a kerf beside the line as well: both move the same line out into the waste.',
    why: 'Cuts are moved by half the kerf by themselves. An offset that was written for the kerf does it a second time: parts come out larger by a kerf, openings smaller.',
    mend: 'Leave the offset out. Or write `without kerf`, so that the offset alone moves the line; a clearance of another size is nobody’s kerf and is not meant.',
    source: 'Own reasoning: an edge that is moved twice. How near an offset has to be to half the kerf is common practice, no source.',
};

export const offsetBesideKerf: Rule = {
    page,
    *examine({ steps }) {
        for (const { step, laser } of steps) {
            const { offset, offsetWhere } = step.kind === 'cut' ? step : {};
            const moved = laser === undefined || offset === undefined ? undefined : movedTwice(laser, offset.value);
            if (offset === undefined || offsetWhere === undefined || moved === undefined) continue;
            const { shift, comesOut } = moved;
            yield finding(page, {
                severity: 'warning',
                message: phrase`\`offset\` moves the line of ${laser!.step.name} by ${showLength(Math.abs(offset.value))}, and half the kerf, ${showLength(shift)}, is added by itself: ${comesOut} than drawn by ${showLength(2 * Math.abs(offset.value))}.`,
                where: offsetWhere,
                step: step.index,
                fixes: [
                    { title: phrase`Leave the offset out`, preferred: true, changes: [{ do: 'remove', where: offsetWhere }] },
                ],
            });
        }
    },
};

/** Half the kerf where the offset goes the same way, into the waste, and what becomes of the pieces. */
function movedTwice({ cutLine }: LaserPlan, offset: number): { shift: number; comesOut: string } | undefined {
    if (cutLine === undefined) return undefined;
    const { shift, parts, openings } = cutLine;
    const ofKerf = Math.abs(offset) / (2 * shift);
    if (!(ofKerf >= LEAST && ofKerf <= MOST)) return undefined;
    if (offset > 0 && !isEmpty(parts)) return { shift, comesOut: 'parts come out larger' };
    return offset < 0 && !isEmpty(openings) ? { shift, comesOut: 'openings come out smaller' } : undefined;
}
