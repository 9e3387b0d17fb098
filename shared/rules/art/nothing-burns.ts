import type { Art, ArtPart } from '../../art/art';
import { isBitmapArt } from '../../art/bitmap';
import { isEmpty } from '../../geometry/measure';
import { showRatio } from '../../quantity/show';
import type { Written } from '../../quantity/where';
import type { Fix } from '../../recipe/finding';
import { nearest } from '../../recipe/nearest';
import { phrase } from '../../recipe/phrase';
import { pickText } from '../../recipe/pick-text';
import { type Page, plainFact } from '../page';
import { finding, type Rule, type Said } from '../rule';

const page: Page = {
    id: 'nothing-burns',
    title: 'Nothing burns',
    severities: ['error'],
    quickFix: 'sometimes',
    condition:
        'A step picks parts of its art by a name that none of them has; or nothing of what it picks is as dark as the threshold.',
    error: 'Always: the step does nothing.',
    why: 'The machine runs for nothing, or not at all; turned inside out, everything within the boundary is burnt away.',
    mend: 'Correct the `#id` or `.class`, which are those of the shapes in the file and of the groups around them; or lower the `threshold` of the art.',
    source: plainFact,
};

export const nothingBurns: Rule = {
    page,
    *examine(plan) {
        const sources = new Map(plan.recipe.arts.map((source) => [source.name, source]));
        for (const { step, laser } of plan.steps) {
            if (laser === undefined || (step.kind !== 'engrave' && step.kind !== 'cut')) continue;
            for (const { index, figure } of laser.placed) {
                const placement = step.placements[index];
                const name = placement?.kind === 'art' ? placement.art.value : undefined;
                const state = plan.arts.get(name ?? '');
                if (placement?.kind !== 'art' || name === undefined || state?.kind !== 'art') continue;
                if (!hasAnything(state.art)) continue; // art-missing says it
                const astray = [...placement.picks, ...(placement.leaves ?? [])].filter(
                    (pick) => !state.art.parts.some((part) => carries(part, pick.value)),
                );
                for (const pick of astray) yield finding(page, { ...noSuchPart(pick, name, state.art), step: step.index });
                if (astray.length > 0 || !isEmpty(figure)) continue;
                const threshold = sources.get(name)?.threshold;
                const what = placement.picks.length === 0 ? name : placement.picks.map(({ value }) => pickText(value)).join(', ');
                yield finding(page, {
                    severity: 'error',
                    message: phrase`Nothing of ${what} is darker than ${showRatio(threshold?.value ?? 0.5)}, so nothing burns.`,
                    where: placement.art.where,
                    step: step.index,
                    related:
                        threshold === undefined
                            ? []
                            : [{ message: phrase`The threshold is written here.`, where: threshold.where }],
                });
            }
        }
    },
};

/** Of a picture every pixel counts, since its threshold may be any. */
function hasAnything(art: Art): boolean {
    return art.parts.length > 0 || (isBitmapArt(art) && art.raster.darkness.length > 0);
}

function carries({ ids, classes }: ArtPart, pick: string): boolean {
    return pick.startsWith('#') ? ids.includes(pick.slice(1)) : classes.includes(pick.slice(1));
}

function noSuchPart({ value, where }: Written<string>, name: string, art: Art): Said {
    if (isBitmapArt(art)) {
        const fixes: Fix[] = [{ title: phrase`Take all of it`, preferred: true, changes: [{ do: 'remove', where }] }];
        return { severity: 'error', message: phrase`${name} is a picture: it has no parts to pick.`, where, fixes };
    }
    const known = new Set(
        art.parts.flatMap(({ ids, classes }) => [...ids.map((id) => `#${id}`), ...classes.map((c) => `.${c}`)]),
    );
    const near = nearest(value, known);
    const meant = near === undefined ? undefined : pickText(near);
    const list = [...known].slice(0, 6).map(pickText).join(', ');
    const mend =
        meant !== undefined
            ? phrase` Did you mean \`${meant}\`?`
            : known.size > 0
              ? phrase` It has ${list}${known.size > 6 ? phrase` and more` : ''}.`
              : phrase` None of its parts has a name.`;
    return {
        severity: 'error',
        message: phrase`No part of ${name} is called \`${pickText(value)}\`.${mend}`,
        where,
        fixes:
            meant === undefined
                ? []
                : [{ title: phrase`Change to \`${meant}\``, preferred: true, changes: [{ do: 'replace', where, text: meant }] }],
    };
}
