import { hair, isOpenPocket } from '../../piece/column';
import type { Face } from '../../piece/face';
import { showLength } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import { contentOf, faceAtEnd } from '../helpers/face-at';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Depth (mm) from which an open edge gets in the way of what is laid or wiped on it: 1/16 in. @commonPractice */
const STEP_DEPTH = 25.4 / 16;

const page: Page = {
    id: 'too-deep-to-touch',
    title: 'Open and too deep for daily use',
    severities: ['hint', 'warning'],
    quickFix: 'sometimes',
    condition: 'When the recipe ends, an engraving is still open, and its floor lies 1.6 mm (1/16 in) or more below the face.',
    why: 'From about there on its rim is a small step: crumbs collect behind it, and cloths and fingers hang on it, each time a board or a worktop is used.',
    mend: 'Ask for less depth, or add a fill. What only hangs on a wall says so in its blank: `touched by nobody`. Under `touched by food` and `touched by hands` the hint becomes a warning.',
    source: commonPractice,
};

export const tooDeepToTouch: Rule = {
    page,
    *examine(plan) {
        for (const blank of plan.blanks) {
            const face = faceAtEnd(plan, blank.name);
            const use = blank.blank.touchedBy?.value;
            if (face === undefined || face.inside !== undefined || use === 'nobody') continue;
            for (const [index, depth] of openDepths(face)) {
                const step = plan.steps[index]?.step;
                // What is left open around what was put in is its clearance.
                if (step?.kind !== 'engrave' || contentOf(plan, index) !== undefined || depth < STEP_DEPTH) continue;
                yield finding(page, {
                    severity: use === undefined ? 'hint' : 'warning',
                    message: phrase`${step.name} stays open and ${showLength(depth)} deep: its edge catches crumbs, cloths and fingers. Fill it or ask for less than ${showLength(STEP_DEPTH)} on a surface ${use === undefined ? phrase`that is used` : phrase`that ${use} touch${use === 'food' ? 'es' : ''}`}.`,
                    where: step.depth?.where ?? step.where,
                    step: step.index,
                    fixes:
                        use === undefined
                            ? [
                                  {
                                      title: phrase`Say that nobody touches it`,
                                      changes: [{ do: 'add', block: blank.blank.whole, statement: 'touched by nobody' }],
                                  },
                              ]
                            : [],
                });
            }
        }
    },
};

/** How deep each step's hollows are below the face, where they are open; of several depths the greatest. */
function openDepths({ cells, level }: Face): Map<number, number> {
    const found = new Map<number, number>();
    for (const { column } of cells) {
        const dug = column.digs.findLast(({ depth }) => depth.value > hair)?.step;
        if (dug === undefined || !isOpenPocket(column)) continue;
        found.set(dug, Math.max(found.get(dug) ?? 0, column.top.value - level.value));
    }
    return found;
}
