import { equilibriumMoisture, keptMoisture } from '../../bench/moisture';
import type { BlankPlan, Plan } from '../../plan/plan';
import { showRatio } from '../../quantity/show';
import type { Finding, Fix } from '../../recipe/finding';
import { phrase } from '../../recipe/phrase';
import { materialName } from '../helpers/blank-names';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** Further than this beyond what the place makes of wood, it moves too much to be left to itself. @commonPractice */
const beyond = 0.02;
/** The room's usual warmth where a shop says only how damp it is, degC. */
const usualRoom = 20;

const page: Page = {
    id: 'wet-wood',
    title: 'Wood too wet for where it is kept',
    severities: ['warning'],
    quickFix: 'sometimes',
    condition: `A board or veneer is worked with more moisture than wood comes to where the piece is kept (\`kept indoors\`, which is usual, or \`kept outdoors\`), by more than ${beyond * 100} %; or it comes to so much in a shop as damp as \`humidity\` says.`,
    why: 'It dries on where it hangs, and shrinks across its grain: seams open, fills stand proud, thin boards cup.',
    mend: 'Let it lie in a dry room until a meter shows what the place makes of it, or say that the piece is kept outdoors.',
    source: `EMC by Eq. 4-5 of the Wood Handbook (FPL-GTR-190): 6 to 11 % indoors (20 °C, 30 to 60 % humidity). The climates are ${commonPractice.toLowerCase()}`,
};

export const wetWood: Rule = {
    page,
    *examine(plan) {
        const told = new Set<string>();
        for (const blank of plan.blanks) {
            const moisture = blank.blank.sheet?.moisture;
            const most = keptMoisture[keptAt(blank)].high;
            const name = materialName(blank);
            if (moisture === undefined || told.has(name) || moisture.value - moisture.tolerance <= most + beyond) continue;
            told.add(name);
            yield finding(page, {
                severity: 'warning',
                message: phrase`${name} has ${showRatio(moisture.value)} of moisture; kept ${keptAt(blank)} it comes down to ${showRatio(most)} or less, and shrinks. Dry it to ${showRatio(most)} first.`,
                where: blank.blank.where,
                related: [{ message: phrase`Its moisture is written here.`, where: moisture.where }],
                fixes: fits(moisture.value, 'outdoors') && keptAt(blank) === 'indoors' ? [outdoors(blank)] : [],
            });
        }
        if (told.size === 0) yield* dampShop(plan);
    },
};

/** A shop in which dry wood does not stay dry. */
function* dampShop({ recipe, blanks }: Plan): Iterable<Finding> {
    const humidity = recipe.shop?.humidity;
    const moisture = humidity && equilibriumMoisture(recipe.shop?.temperature?.value ?? usualRoom, humidity.value);
    const blank =
        moisture === undefined
            ? undefined
            : blanks.find((each) => each.blank.sheet !== undefined && !fits(moisture, keptAt(each)));
    if (blank === undefined || moisture === undefined || humidity === undefined) return;
    const most = keptMoisture[keptAt(blank)].high;
    yield finding(page, {
        severity: 'warning',
        message: phrase`In a shop of ${showRatio(humidity.value)} humidity wood comes to ${showRatio(moisture)} of moisture; kept ${keptAt(blank)} it comes down to ${showRatio(most)} or less. Dry the shop, or work ${blank.name} soon after it comes out of a dry room.`,
        where: blank.blank.where,
        related: [{ message: phrase`The shop says its humidity here.`, where: humidity.where }],
        fixes: fits(moisture, 'outdoors') ? [outdoors(blank)] : [],
    });
}

function keptAt({ blank }: BlankPlan): 'indoors' | 'outdoors' {
    return blank.kept?.value ?? 'indoors';
}

function fits(moisture: number, place: 'indoors' | 'outdoors'): boolean {
    return moisture <= keptMoisture[place].high + beyond;
}

function outdoors({ name, blank }: BlankPlan): Fix {
    return {
        title: phrase`Say that ${name} is kept outdoors`,
        changes:
            blank.kept === undefined
                ? [{ do: 'add', block: blank.whole, statement: 'kept outdoors' }]
                : [{ do: 'replace', where: blank.kept.where, text: 'kept outdoors' }],
    };
}
