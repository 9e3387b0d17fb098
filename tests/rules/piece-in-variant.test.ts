import { describe, expect, it } from 'vitest';
import { memoryWorkshop } from '../kit/memory-workshop';
import { art, coupon, inlayRecipe } from '../kit/shop';
import { recipe as made } from './harness';

const stock = `${coupon('ash-10', 'shed')}\nresin buoy-red { kind slow-epoxy  colour #a12a1c }\n`;
const board = 'blank b { of ash-10 size 100 x 100 mm grain along width }';
const seal = 'seal b with shellac { coats 2 }\n wait 2 h\n';
const recipe = (body: string): string => made(`${board}\n ${body}`, stock);
const at = (name: string, size: string, place: string, how = 'depth 0.6 mm') =>
    `engrave ${name} on b { rectangle ${size} mm at ${place} mm ${how} air off }\n`;
const inlaid = (before: string) => inlayRecipe().replace('engrave pocket', `${before}\n engrave pocket`);

/** A base of which the rule says nothing, and what a variant changes so that it speaks. */
const cases: readonly (readonly [rule: string, base: string, name: string, change: string])[] = [
    [
        'pocket-in-pocket',
        inlaid('engrave shelf on tray { rectangle 20 x 20 mm at 20, 20 mm depth 0.5 mm air off }'),
        'tray',
        'engrave shelf { rectangle 60 x 60 mm at 100, 75 mm }',
    ],
    [
        'thin-wall',
        recipe(`${at('one', '20 x 20', '30, 50')} ${at('two', '20 x 20', '52, 50')}`),
        'thing',
        'engrave two { rectangle 20 x 20 mm at 50.2, 50 mm }',
    ],
    [
        'fill-runs-over',
        recipe(
            `${at('one', '20 x 20', '30, 50')} ${at('two', '20 x 20', '50.6, 50')} ${seal} fill one with tide-blue fill two with buoy-red`,
        ),
        'thing',
        'engrave two { rectangle 20 x 20 mm at 50, 50 mm }',
    ],
    [
        'cut-through-work',
        recipe(
            `${at('one', '40 x 20', '50, 50')} cut out on b { rectangle 60 x 60 mm at 50, 50 mm air on } ${seal} fill one with tide-blue`,
        ),
        'thing',
        'cut out { rectangle 30 x 60 mm at 50, 50 mm }',
    ],
    [
        'laser-on-resin',
        recipe(
            `${at('one', '30 x 20', '50, 50')} ${seal} fill one with tide-blue wait 24 h cut out on b { rectangle 60 x 60 mm at 50, 50 mm air on }`,
        ),
        'thing',
        'cut out { rectangle 20 x 60 mm at 50, 50 mm }',
    ],
    [
        'laser-on-wet',
        recipe(`seal b with shellac { coats 2 } wait 5 min ${at('one', '0.5 x 0.5', '50, 50')}`),
        'thing',
        'engrave one { rectangle 20 x 20 mm at 50, 50 mm }',
    ],
    [
        'laser-on-foil',
        inlayRecipe().replace(
            'peel bird',
            'engrave line on tray { rectangle 20 x 20 mm at 20, 20 mm tone 60 % air off } peel bird',
        ),
        'tray',
        'engrave line { rectangle 60 x 60 mm at 100, 75 mm }',
    ],
    [
        'mask-under-pour',
        recipe(`${at('one', '0.5 x 0.5', '50, 50')} ${seal} mask b fill one with tide-blue wait 24 h peel b`),
        'thing',
        'engrave one { rectangle 20 x 20 mm at 50, 50 mm }',
    ],
    ['skin-left', inlayRecipe(), 'tray', 'engrave relief { depth 0.4 mm }'],
    [
        'mark-dug-away',
        recipe(`${at('word', '40 x 10', '50, 50', 'tone 70 %')} ${at('pond', '20 x 20', '40, 80')}`),
        'thing',
        'engrave pond { rectangle 20 x 20 mm at 40, 50 mm }',
    ],
];

describe('what steps do to each other is said in a variant that brings it about', () => {
    it.each(cases)('%s', async (rule, base, name, change) => {
        const kit = await memoryWorkshop(art);
        const document = await kit.open(`${base}\nrecipe other based on ${name} { ${change} }\n`);
        expect(kit.workshop.textFindings(document).filter(({ severity }) => severity === 'error')).toEqual([]);
        const said = ((await kit.workshop.tradeFindings(document)) ?? []).filter((finding) => finding.rule === rule);
        expect(said.filter(({ where }) => where.offset < base.length).map(({ message }) => message)).toEqual([]);
        expect(said.length).toBeGreaterThan(0);
    });
});
