import { expect, test } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import type { Recipe } from '../../shared/recipe/recipe';
import type { Engrave } from '../../shared/recipe/step';
import { open, services } from './services';

const shop = `laser shed { beam co2  power 45 W }
board oak { wood white-oak  thickness 10 mm  moisture 8 % }
coupon oak on shed { burn 40 % at 400 mm/s gives 0.2 mm }
`;
const recipe = (lines: string, name = 'r', head = '') =>
    `recipe ${name} ${head} { ${head === '' ? 'laser shed  art moon "moon.svg"  blank tray { of oak  size 90 x 60 mm } ' : ''}${lines} }\n`;

async function lowered(text: string, uri?: string): Promise<readonly Recipe[]> {
    const document = await open(text, uri);
    expect(textFindings(document, services).filter(({ severity }) => severity === 'error')).toEqual([]);
    return lowerFile(document, services);
}

function engraving(from: Recipe | undefined): Engrave {
    const found = from?.steps.find((step): step is Engrave => step.kind === 'engrave');
    if (found === undefined) throw new Error('No engraving.');
    return found;
}

test('a coupon counts for the board that it names, not for another of that name', async () => {
    await open(shop, 'file:///counts/stock.kerf');
    const own = `use "stock.kerf"\nboard oak { wood white-oak  thickness 6 mm  moisture 8 % }\n`;
    const step = recipe('engrave a on tray { circle 20 mm  depth 0.5 mm }');
    const [other] = await lowered(`${own}${step}`, 'file:///counts/other.kerf');
    expect(other?.coupons).toEqual([]);
    const [same] = await lowered(`use "stock.kerf"\n${step}`, 'file:///counts/same.kerf');
    expect(same?.coupons).toHaveLength(1);
    const [burnt] = await lowered(
        `${own}coupon oak on shed { burn 50 % at 400 mm/s gives 0.3 mm }\n${step}`,
        'file:///counts/burnt.kerf',
    );
    expect(burnt?.coupons.map(({ burns }) => burns[0]?.depth.value)).toEqual([0.3]);
});

test('mirror off does not mirror, and takes the place of a mirror of the base', async () => {
    const base = recipe('engrave a on tray { circle 20 mm  depth 0.5 mm  mirror }');
    const [mirrored, plain] = await lowered(`${shop}${base}${recipe('engrave a { mirror off }', 's', 'based on r')}`);
    expect(engraving(mirrored).mirror).toHaveLength(1);
    expect(engraving(plain).mirror).toEqual([]);
});

test('a tone of a variant takes the place of the depth, `without art` leaves out what the base burns', async () => {
    const base = recipe('engrave a on tray { circle 20 mm  circle 30 mm  depth 0.5 mm }');
    const [, variant] = await lowered(
        `${shop}${base}${recipe('engrave a { tone 60 %  without art  circle 5 mm }', 's', 'based on r')}`,
    );
    expect(engraving(variant)).toMatchObject({ tone: { value: 0.6 }, placements: [{ outline: { diameter: { value: 5 } } }] });
    expect(engraving(variant).depth).toBeUndefined();
});

test('a wait as a range has both ends, a time in two parts is one', async () => {
    const [range] = await lowered(
        `${shop}${recipe('sand tray { take 0.1 mm }  wait 12 .. 24 h  wait 30 min .. 2 h  wait 1 h 30 min  wait 2 h +- 30 min')}`,
    );
    const waits = range?.steps.filter((step) => step.kind === 'wait') ?? [];
    expect(waits.map(({ time, longest }) => [time.value / 3600, longest && longest.value / 3600])).toEqual([
        [12, 24],
        [0.5, 2],
        [1.5, undefined],
        [1.5, 2.5],
    ]);
});

test('printed figures are the figures', async () => {
    const [read] = await lowered(
        `${shop}${recipe('engrave a on tray { rectangle 20×10 mm turned 30° at 45, 30 mm  depth 0.5 ± 0.1 mm }  sand tray { grits P120 }')}`,
    );
    const step = engraving(read);
    expect(step.depth).toMatchObject({ value: 0.5, tolerance: 0.1, unit: 'mm' });
    const [shape] = step.placements;
    expect(shape).toMatchObject({ outline: { size: { width: { value: 20 }, height: { value: 10 } } }, at: { x: { value: 45 } } });
    expect(shape?.turn?.value).toBeCloseTo(Math.PI / 6, 12);
    expect(read?.steps.find((each) => each.kind === 'sand')?.grits.map(({ name }) => name)).toEqual(['120']);
});

test('what is picked, and what is left out of it', async () => {
    const [picked] = await lowered(
        `${shop}${recipe('engrave a on tray { art moon .sky, .moon but #keel at 45, 30 mm  depth 0.5 mm }')}`,
    );
    const [art] = engraving(picked).placements;
    expect(art?.kind === 'art' && [art.picks.map(({ value }) => value), art.leaves?.map(({ value }) => value)]).toEqual([
        ['.sky', '.moon'],
        ['#keel'],
    ]);
});

test('a run of a step that was renamed is a run of the step', async () => {
    const text = `${shop}${recipe('engrave hollow on tray { was pocket  circle 20 mm  depth 0.5 mm }')}run r 2026-11-28 { pocket depth 0.49 mm }\n`;
    const [found] = await lowered(text);
    expect(found?.runs[0]?.burnt[0]?.step.value).toBe('hollow');
});
