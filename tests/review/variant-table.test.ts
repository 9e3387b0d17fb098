import { describe, expect, it } from 'vitest';
import { allRecipes, tableJob } from '../../server/review/table-jobs';
import { familiesOf, familyOf } from '../../shared/review/families';
import { tableHtml } from '../../shared/review/html/table';
import { tableCsv, tableMarkdown, tableText } from '../../shared/review/table-text';
import type { TableRow, VariantTable } from '../../shared/review/variant-table';
import { memoryWorkshop } from '../kit/memory-workshop';
import { art, fillRecipe } from '../kit/shop';

const shopWithPrices = fillRecipe().replace(
    'board ash-10 {',
    'shop bench { currency EUR hourly 30 markup 50 % }\nboard ash-10 { sheet 1000 x 200 mm price 20 for 1 sheet ',
);

/** A coaster, a deeper one, and one that stands on the deeper one; something else beside them. */
const family = `${shopWithPrices}
recipe deep "Deep | coaster" based on coaster {
  make 4
  engrave hollow { depth 1.4 mm }
  after fill hollow { wait 2 h  do "knock the bubbles out" for 5 min }
}
recipe wide based on deep {
  blank disc { of walnut-12 size 120 x 120 mm }
  without seal disc
}
recipe plain { laser shed blank b { of ash-10 size 20 x 20 mm } sand b { take 0.1 mm } }
`;

async function familyTable(all = false, base = 'coaster', text = family): Promise<VariantTable> {
    const { workshop, open } = await memoryWorkshop(art);
    await open(text);
    const known = allRecipes(workshop);
    return workshop.ask(
        tableJob(
            'table',
            workshop,
            familyOf(
                base,
                known.map(({ recipe }) => recipe),
            ),
            known,
            all,
        ),
    );
}

function row({ groups }: VariantTable, group: string, label: string, kind: TableRow['kind'] = 'written'): TableRow {
    const rows = groups.find(({ title }) => title === group)?.rows ?? [];
    const found = rows.find((each) => each.label === label && each.kind === kind);
    if (found === undefined) {
        throw new Error(
            `No ${kind} ${label} in ${group}: ${groups.map(({ title }) => title).join(', ')}; ${rows.map((each) => each.label).join(', ')}`,
        );
    }
    return found;
}

const texts = ({ cells }: TableRow): (string | undefined)[] => cells.map((cell) => cell?.text);

describe('variants side by side', () => {
    it('a family is a recipe and all that is based on it, near or far', async () => {
        const { workshop, open } = await memoryWorkshop(art);
        const recipes = workshop.recipes(await open(family));
        expect(familiesOf(recipes).map((each) => each.map(({ name }) => name))).toEqual([['coaster', 'deep', 'wide']]);
        expect(familyOf('deep', recipes).map(({ name }) => name)).toEqual(['deep', 'wide']);
        expect(familyOf('plain', recipes).map(({ name }) => name)).toEqual(['plain']);
        expect(familyOf('nothing', recipes)).toEqual([]);
    });

    it('stock, sizes, depths, steps, time, quantities, cost, findings: what differs, in the order of the work', async () => {
        const table = await familyTable();
        expect(table.columns).toEqual([
            { recipe: 'coaster', title: 'Coaster' },
            { recipe: 'deep', title: 'Deep | coaster', base: 'coaster' },
            { recipe: 'wide', title: 'wide', base: 'deep' },
        ]);
        expect(texts(row(table, 'Recipe', 'make'))).toEqual(['2', '4', '4']);
        expect(texts(row(table, 'Blank disc', 'sheet'))).toEqual(['ash-10', 'ash-10', 'walnut-12']);
        expect(texts(row(table, 'Blank disc', 'thickness'))).toEqual(['10 ± 0.2 mm', '10 ± 0.2 mm', '12 ± 0.3 mm']);
        expect(texts(row(table, 'Engrave hollow', 'depth'))).toEqual(['1.2 mm', '1.4 mm', '1.4 mm']);
        expect(row(table, 'Engrave hollow', 'depth').cells[1]?.amount).toMatchObject({ value: 1.4, dimension: 'length' });
        expect(texts(row(table, 'Engrave hollow', 'settings from', 'follows'))).toEqual([
            'a guess, no coupon',
            'a guess, no coupon',
            'a coupon',
        ]);
        expect(texts(row(table, 'knock the bubbles out', 'done'))).toEqual([undefined, 'yes', 'yes']);
        expect(texts(row(table, 'Seal disc with shellac', 'done'))).toEqual(['yes', 'yes', undefined]);
        const order = table.groups.map(({ title }) => title);
        expect(order.indexOf('Engrave hollow')).toBeLessThan(order.indexOf('knock the bubbles out'));
        expect(row(table, 'For all the pieces', 'ready after', 'follows').differs).toBe(true);
        expect(texts(row(table, 'To have on the bench', 'board ash-10', 'follows'))[2]).toBeUndefined();
        expect(texts(row(table, 'What it costs', 'price of one', 'follows')).every((text) => /^\d+\.\d\d EUR$/.test(text!))).toBe(
            true,
        );
        expect(texts(row(table, 'Findings', 'guessed settings', 'follows'))).toEqual(['1', '1', '0']);
    });

    it('what is the same in all is left out, unless all is wanted', async () => {
        const table = await familyTable();
        expect(table.groups.flatMap(({ rows }) => rows).every(({ differs }) => differs)).toBe(true);
        expect(() => row(table, 'Blank disc', 'grain')).toThrow();
        const all = await familyTable(true);
        expect(row(all, 'Blank disc', 'grain').differs).toBe(false);
        expect(all.groups.flatMap(({ rows }) => rows).filter(({ differs }) => differs)).toEqual(
            table.groups.flatMap(({ rows }) => rows),
        );
    });

    it('recipes that are the same differ in nothing but their name and what they stand on', async () => {
        const table = await familyTable(false, 'coaster', `${fillRecipe()}\nrecipe twin "Twin" based on coaster { }`);
        expect(table.groups.flatMap(({ title, rows }) => rows.map(({ label }) => `${title}: ${label}`))).toEqual([
            'Recipe: based on',
        ]);
    });

    it('as text, Markdown, CSV and a page, each with every figure and nothing that breaks out', async () => {
        const table = await familyTable();
        const text = tableText(table);
        expect(text).toMatch(/^ +coaster +deep +wide$/m);
        expect(text).toMatch(/^ {2}depth +1\.2 mm +1\.4 mm +1\.4 mm$/m);
        expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThan(150);
        expect(tableMarkdown(table)).toContain('| depth | 1.2 mm | 1.4 mm | 1.4 mm |');
        expect(tableMarkdown(table).split('\n')[0]).toBe('|  | Coaster | Deep \\| coaster | wide |');
        expect(tableCsv(table)).toContain('Engrave hollow,depth,written,1.2 mm,1.4 mm,1.4 mm\r\n');
        const page = tableHtml(table);
        expect(page).toContain('<td>1.4 mm</td>');
        expect(page).not.toMatch(/<script|\son\w+=|style=/);
        expect(tableText({ ...table, groups: [] })).toBe('They differ in nothing.\n');
    });
});

describe('steps lined up', () => {
    it('the same new step of two variants is one row', async () => {
        const step = 'after seal disc { do "let it rest" for 1 h }';
        const text = `${fillRecipe()}\nrecipe a based on coaster { ${step} }\nrecipe b based on coaster { make 9 ${step} }`;
        const table = await familyTable(false, 'coaster', text);
        expect(table.groups.filter(({ title }) => title === 'let it rest')).toHaveLength(1);
        expect(texts(row(table, 'let it rest', 'done'))).toEqual([undefined, 'yes', 'yes']);
    });
});
