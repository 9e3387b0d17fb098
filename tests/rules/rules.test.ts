import { beforeAll, describe, expect, it } from 'vitest';
import type { Finding } from '../../shared/recipe/finding';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';
import { art, fillRecipe, inlayRecipe, shop } from '../kit/shop';

/** A 2 x 2 grey PNG without a size of its own. */
const dots = Uint8Array.from(
    atob('iVBORw0KGgoAAAANSUhEUgAAAAIAAAACCAAAAABX3VL4AAAADklEQVR4nGNgYGD4/x8AAwEB/wv0S6cAAAAASUVORK5CYII='),
    (c) => c.charCodeAt(0),
);

let kit: MemoryWorkshop;
beforeAll(async () => {
    kit = await memoryWorkshop({ ...art, 'dots.png': dots });
});

async function rulesOf(text: string): Promise<string[]> {
    return (await kit.findings(text)).filter(loud).map((finding) => finding.rule);
}

async function one(text: string, rule: string): Promise<Finding> {
    const all = await kit.findings(text);
    const found = all.filter((finding) => finding.rule === rule);
    expect(found, `${rule} among ${all.map((finding) => `${finding.rule}: ${finding.message}`).join('\n')}`).toHaveLength(1);
    return found[0]!;
}

function words(text: string, finding: Finding): string {
    return text.slice(finding.where.offset, finding.where.offset + finding.where.length);
}

function loud(finding: Finding): boolean {
    return finding.severity === 'error' || finding.severity === 'warning';
}

describe('good recipes', () => {
    it('an inlay has nothing to say', async () => expect(await rulesOf(inlayRecipe())).toEqual([]));
    it('a fill has nothing to say', async () => expect(await rulesOf(fillRecipe())).toEqual([]));
});

describe('depth and stack', () => {
    it('deeper than the blank at its thinnest', async () => {
        const text = fillRecipe({ pocket: 'art flag depth 9.9 mm power 80 % speed 20 mm/s pitch 0.1 mm passes 8 air off' });
        const deep = text.replace('depth 9.9 mm power 80 % speed 20 mm/s pitch 0.1 mm passes 8', 'depth 13 mm');
        const finding = await one(deep, 'deeper-than-blank');
        expect(finding.severity).toBe('error');
        expect(finding.message).toBe(
            'The hollow is 13 mm deep; ash-10 is 10 mm thick (9.8 mm at its thinnest): at most 3.2 mm leaves a floor of 1 mm.',
        );
        expect(words(deep, finding)).toBe('13 mm');
    });
    it('is silent at a depth that leaves wood', async () =>
        expect(await rulesOf(fillRecipe())).not.toContain('deeper-than-blank'));
    it('floor too thin', async () => {
        const finding = await one(fillRecipe({ pocket: 'art flag depth 9.4 mm air off' }), 'thin-floor');
        expect(finding.message).toContain('0.6 mm');
    });
    it('veneer proud, with a depth that would do', async () => {
        const text = inlayRecipe({ pocket: 'art flag depth 0.25 mm air off' });
        const finding = await one(text, 'veneer-proud');
        expect(finding.fixes[0]?.changes[0]).toMatchObject({ do: 'replace', text: '0.55 mm' });
    });
    it('veneer left too thin', async () => {
        const finding = await one(inlayRecipe({ after: 'sand tray { flush then 0.4 mm grits 120 }' }), 'veneer-thin');
        expect(finding.message).toContain('should stay');
    });
    it('sanding takes the whole fill', async () => {
        const finding = await one(fillRecipe({ after: 'sand disc { flush then 1.5 mm grits 80 }' }), 'fill-sanded-away');
        expect(finding.severity).toBe('error');
    });
    it('sanding leaves a skin of fill', async () => {
        const finding = await one(fillRecipe({ after: 'sand disc { flush then 1.1 mm grits 80 }' }), 'fill-sanded-away');
        expect(finding.severity).toBe('warning');
    });
});

describe('mirror and inverse', () => {
    it('not mirrored, with the area that clashes; allow does not silence it', async () => {
        const relief = 'art flag inverse within grown 6 mm depth through air off allow not-mirrored because "looks fine"';
        const finding = await one(inlayRecipe({ relief }), 'not-mirrored');
        expect(finding).toMatchObject({ severity: 'error', firm: true });
        expect(finding.message).toMatch(/[\d.]+ (mm|cm)² of its/);
        expect(finding.fixes[0]?.changes).toMatchObject([{ do: 'add', statement: 'mirror' }]);
    });
    it('not mirrored but symmetric is a warning that allow silences', async () => {
        const text = (relief: string) => inlayRecipe({ pocket: 'art diamond depth 0.55 mm air off', relief });
        const bare = text('art diamond inverse within grown 6 mm depth through air off');
        expect(await one(bare, 'not-mirrored')).toMatchObject({ severity: 'warning', firm: false });
        const allowed = text(
            'art diamond inverse within grown 6 mm depth through air off allow not-mirrored because "a diamond"',
        );
        expect(await rulesOf(allowed)).not.toContain('not-mirrored');
    });
    it('an allow that silences nothing is said', async () => {
        const relief = 'art flag inverse within grown 6 mm mirror depth through air off allow not-mirrored because "?"';
        expect(await one(inlayRecipe({ relief }), 'allow-silences-nothing')).toMatchObject({ severity: 'hint' });
    });
    it('mirrored twice in a step', async () => {
        const finding = await one(
            inlayRecipe({ relief: 'art flag inverse within grown 6 mm mirror mirror depth through air off' }),
            'mirrored-twice',
        );
        expect(finding.fixes[0]?.changes).toHaveLength(1);
    });
    it('both halves mirrored', async () => {
        const text = inlayRecipe({ pocket: 'art flag mirror depth 0.55 mm air off' });
        const finding = await one(text, 'mirrored-twice');
        expect(finding.message).toContain('Both halves');
    });
    it('not inverse', async () => {
        const text = inlayRecipe({ relief: 'art flag mirror depth through air off' });
        const finding = await one(text, 'not-inverse');
        expect(words(text, finding)).toBe('flag');
    });
});

describe('fill and order', () => {
    it('no depth for a fill', async () => {
        expect((await one(fillRecipe({ pocket: 'art flag tone 60 % air off' }), 'shallow-fill')).severity).toBe('error');
    });
    it('too little depth for a fill', async () => {
        expect((await one(fillRecipe({ pocket: 'art flag depth 0.2 mm air off', after: '' }), 'shallow-fill')).severity).toBe(
            'warning',
        );
    });
    it('filled before it is sealed, with the seal moved as a fix', async () => {
        const text = fillRecipe({ between: '', after: 'seal disc with shellac' });
        const finding = await one(text, 'unsealed-fill');
        expect(words(text, finding)).toBe('fill');
        expect(finding.fixes[0]?.changes[0]).toMatchObject({ do: 'move' });
    });
    it('walnut hardly bleeds', async () => {
        expect(await rulesOf(fillRecipe({ between: '', wood: 'walnut-12' }))).not.toContain('unsealed-fill');
    });
});

describe('burn', () => {
    it('air on while engraving', async () => {
        const text = fillRecipe({ pocket: 'art flag depth 1.2 mm air on' });
        expect(words(text, await one(text, 'air-while-engraving'))).toBe('air on');
    });
    it('scan along the grain, by word or by angle', async () => {
        expect(
            await one(fillRecipe({ pocket: 'art flag depth 1.2 mm air off scan along grain' }), 'scan-along-grain'),
        ).toBeDefined();
        expect(
            (await one(fillRecipe({ pocket: 'art flag depth 1.2 mm air off scan at 20 deg' }), 'scan-along-grain')).message,
        ).toContain('20°');
        expect(await rulesOf(fillRecipe({ pocket: 'art flag depth 1.2 mm air off scan at 80 deg' }))).not.toContain(
            'scan-along-grain',
        );
    });
    it('no backing under loose pieces', async () => {
        const blanks =
            'blank tray { of walnut-12 size 200 x 150 mm grain along width } blank bird { of maple-06 size 80 x 70 mm grain along width }';
        const finding = await one(inlayRecipe({ blanks }), 'no-backing');
        expect(finding.message).toMatch(/^relief leaves 1 loose piece /);
    });
});

describe('art', () => {
    const recipe = (file: string, items: string) => `${shop}
recipe sign { revision 1 make 1 laser shed art a "${file}" { width 20 mm }
  blank b { of ash-10 size 60 x 40 mm grain along width }
  engrave e on b { ${items} } }`;
    it('missing', async () => {
        const text = recipe('nowhere.svg', 'art a tone 50 % air off');
        expect(words(text, await one(text, 'art-missing'))).toBe('"nowhere.svg"');
    });
    it('outside the workspace is refused', async () => {
        expect((await one(recipe('../../etc/passwd.svg', 'art a tone 50 % air off'), 'art-missing')).message).toBeDefined();
    });
    it('off the blank, by how much', async () => {
        const text = recipe('flag.svg', 'art a at 55, 20 mm tone 50 % air off');
        const finding = await one(text, 'off-blank');
        expect(words(text, finding)).toBe('55, 20 mm');
    });
    it('outline of a bitmap', async () => {
        expect(await one(recipe('dots.png', 'art a tone 50 % outline 1 air off'), 'outline-of-bitmap')).toBeDefined();
        expect(await rulesOf(recipe('flag.svg', 'art a tone 50 % outline 1 air off'))).toEqual([]);
    });
});
