import { densestPacking, powderShare } from '../../bench/powder';
import type { Quantity } from '../../quantity/quantity';
import { showRatio } from '../../quantity/show';
import type { Finding } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import type { Fill } from '../../recipe/step';
import type { Resin } from '../../recipe/stock';
import type { Page } from '../page';
import { finding, type Rule } from '../rule';

/** Most pigment, as a share of the whole by mass, before resin may stay soft (from memory, no source found). */
const most = 0.1;
/** From here on it hardly can cure (own judgement). */
const farTooMuch = 0.5;
/** Metal powder is heavy: two or three parts to one of mixed resin are usual for casting (from memory, no source found). */
const mostMetal = 0.75;
/** Most of the room that powder stirred in may take. Seen in one seller's guide to cold casting: equal parts by volume still pour. */
const mostRoom = 0.5;

const page: Page = {
    id: 'pigment-overload',
    title: 'Too much pigment',
    severities: ['hint', 'warning'],
    condition: `A resin that is poured holds more than ${most * 100} % of pigment, of the whole by mass; of powder that is stirred in more than ${mostRoom * 100} % of the room or, where its \`solid density\` is not written, more than ${mostMetal * 100} % of the whole by mass, three parts to one of mixed resin; or, packed dry and said by volume, more than the ${densestPacking * 100} % that a powder packs at most.`,
    why: 'Pigment takes no part in the cure. Too much of it leaves the resin soft or chalky, and thick enough to trap air.',
    mend: 'Take less, or try the mix on an offcut first. Paste is commonly used up to 6 %, mica up to 10 %; metal powder from 40 to 75 % by mass, which is 8 to 28 % of the room; as much as 50 % of the room still pours: 89 % by mass of brass, 71 % of aluminium and of most stone, whose densities are about 8.5 and 2.7 g/cm3 (mica 2.8). Powder that is packed dry and wetted with thin glue is said `by volume`, mostly 45 to 60 %.',
    source: 'Half of the room: seen in one seller’s guide to cold casting, which calls equal parts by volume the most that still pours. Densities of quartz 2.65, calcite 2.71 and muscovite mica 2.82 g/cm3: seen in a table of minerals. The rest is from memory, no source found: makers’ sheets differ, and come first.',
};

export const pigmentOverload: Rule = {
    page,
    *examine(plan) {
        for (const { step } of plan.steps) {
            if (step.kind !== 'fill' || step.resin === undefined) continue;
            const { name, pigment, powder, powderBy } = step.resin;
            const room = powderBy === 'volume' ? undefined : powderShare(step.resin).room;
            if (powder !== undefined && powderBy === 'volume') yield* ofPacked(step, step.resin, powder);
            if (powder !== undefined && room !== undefined && room > mostRoom) yield ofStirred(step, step.resin, powder, room);
            for (const { share, what, limit, grave } of [
                { share: pigment, what: 'pigment', limit: most, grave: farTooMuch },
                {
                    share: powderBy === 'volume' || room !== undefined ? undefined : powder,
                    what: 'metal powder',
                    limit: mostMetal,
                    grave: mostMetal,
                },
            ]) {
                if (share === undefined || share.value <= limit) continue;
                const over = share.value > grave;
                const hint = what === 'pigment' && !over ? phrase`; metal powder is written as \`powder\`` : '';
                yield finding(page, {
                    severity: over ? 'warning' : 'hint',
                    message: phrase`${name} is ${showRatio(share.value)} ${what}, of the whole by mass; more than ${showRatio(limit)} may keep it from curing${hint}.`,
                    where: step.where,
                    step: step.index,
                    related: [{ message: phrase`The ${what} is written here.`, where: share.where }],
                });
            }
        }
    },
};

/** Powder that is stirred in and leaves too little resin between its grains. */
function ofStirred(step: Fill, { name, density, solidDensity }: Resin, powder: Quantity, room: number): Finding {
    const grains = solidDensity!.value;
    const most = (mostRoom * grains) / (mostRoom * grains + (1 - mostRoom) * density!.value);
    return finding(page, {
        severity: 'warning',
        message: phrase`${name} is ${showRatio(powder.value)} powder by mass, which takes ${showRatio(room)} of the room: with more than ${showRatio(mostRoom)} it is too thick to run into a pocket. At most ${showRatio(most)} by mass.`,
        where: step.where,
        step: step.index,
        related: [{ message: phrase`The powder is written here.`, where: powder.where }],
    });
}

/** Powder by its share of the room: what can lie there at all, and whether its grams can be worked out. */
function* ofPacked(step: Fill, resin: Resin, powder: Quantity): Iterable<Finding> {
    const base = {
        where: step.where,
        step: step.index,
        related: [{ message: phrase`The powder is written here.`, where: powder.where }],
    };
    if (powder.value > densestPacking) {
        yield finding(page, {
            ...base,
            severity: 'warning',
            message: phrase`${resin.name} is ${showRatio(powder.value)} powder by volume; a powder packs to ${showRatio(densestPacking)} at most, and the rest has to be resin.`,
        });
    } else if (powderShare(resin).mass === undefined) {
        yield finding(page, {
            ...base,
            severity: 'hint',
            message: phrase`How many grams of powder go into ${resin.name} is worked out from its \`solid density\`, which is not written: 8.5 g/cm3 for brass, 2.7 for aluminium.`,
        });
    }
}
