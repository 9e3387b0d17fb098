import { showLength } from '../quantity/show';
import { commonPractice, type Page } from './page';
import { pieceAtEnd } from './piece-at';
import { finding, type Rule } from './rule';

/** Depth that is plainly felt with a finger, mm: 1/16 in, common practice, no source. */
const felt = 25.4 / 16;

const page: Page = {
    id: 'too-deep-to-touch',
    title: 'Too deep for a surface to be used',
    severities: ['hint', 'warning'],
    quickFix: 'sometimes',
    condition: 'A pocket stays open at the end, 1/16 in (1.6 mm) deep or more below the finished face.',
    why: 'Such an edge is plainly felt with a finger, catches cloth and crumbs, and does not wipe clean: wrong for a cutting board or any surface to be used.',
    mend: 'Engrave less deep, or fill it. If the piece is only looked at, write `touched by nobody` in its blank; with food or hands on it (`touched by food`, `touched by hands`) it is a warning.',
    source: commonPractice,
};

export const tooDeepToTouch: Rule = {
    page,
    *examine(plan) {
        for (const blank of plan.blanks) {
            const piece = pieceAtEnd(plan, blank.name);
            const use = blank.blank.touchedBy?.value;
            if (piece === undefined || piece.inside !== undefined || use === 'nobody') continue;
            for (const mark of piece.marks) {
                const step = plan.steps[mark.step]?.step;
                if (mark.kind !== 'pocket' || mark.content !== undefined || step?.kind !== 'engrave') continue;
                const depth = mark.depth.value - piece.face.value;
                if (depth < felt) continue;
                yield finding(page, {
                    severity: use === undefined ? 'hint' : 'warning',
                    message: `${step.name} stays open, ${showLength(depth)} deep: plainly felt with a finger. That is too much for a surface ${use === undefined ? 'to be used' : `that ${use} touch${use === 'food' ? 'es' : ''}`}.`,
                    where: step.depth?.where ?? step.where,
                    step: step.index,
                    fixes:
                        use === undefined
                            ? [
                                  {
                                      title: 'Say that nobody touches it',
                                      changes: [{ do: 'add', block: blank.blank.whole, statement: 'touched by nobody' }],
                                  },
                              ]
                            : [],
                });
            }
        }
    },
};
