import { describe, expect, it } from 'vitest';
import { coaster, otherRecipe, repository, shopFiles } from './shop-files';

const esc = '\u001b';
const csi = '\u009b';
const title = `Lid ${esc}]0;mine\u0007${esc}[2J${csi}31m\u202eend\r::add-mask::x`;
const hostile = {
    ...shopFiles,
    [`a${esc}[31m${csi}.kerf`]: otherRecipe.replace('"Plate"', `"${title}"`).replace('recipe plate', 'recipe plate-2'),
    'b.kerf': otherRecipe
        .replace('"Plate"', `"${title}"`)
        .replace('recipe plate', 'recipe plate-3')
        .replace(
            'sand plate {',
            `check "${title}"\n  do "${title}" { takes 5 min }\n  allow oily-rags "${title}"\n  sand nobody {}\n  sand plate {`,
        ),
    '::warning::x.kerf': otherRecipe.replace('recipe plate', 'recipe plate-4').replace('sand plate', 'sand nobody'),
};
/** What steers a terminal; tabs and line ends aside. */
const steers = /\r(?!\n)|[^\P{Cc}\t\n\r]|[\u202a-\u202e\u2066-\u2069]/u;

describe('names and titles of strangers never steer a terminal or a build service', () => {
    const formats = ['text', 'json', 'sarif', 'junit', 'markdown', 'annotations', 'checkstyle'];
    it.each(formats)('check as %s', async (format) => {
        const { out, err } = await repository(hostile).kerfbook(['check', '--format', format]);
        expect(out).not.toMatch(steers);
        expect(err).toBe('');
        if (format === 'annotations') {
            expect(out).toContain('::error file=');
            for (const line of out.trimEnd().split('\n')) expect(line).toMatch(/^::(?:error|warning|notice) file=[^:]*::/);
        } else {
            expect(out).not.toMatch(/^\s*::/m);
        }
    });

    it.each([
        ...['text', 'markdown', 'json', 'html'].map((format) => ['diff', 'HEAD', '--format', format]),
        ...['text', 'markdown', 'json', 'csv', 'html'].map((format) => [
            'table',
            '--recipes',
            'plate,plate-3',
            '--format',
            format,
        ]),
        ['plan'],
        ['show', 'b.kerf'],
        ['build', '--force', '--out', 'out'],
        ['check', `not${esc}[31mthere.kerf`],
        [`${esc}[31mcommand`],
        ['diff', `${csi}31m`],
    ])('%j', async (...args) => {
        const shop = repository(hostile);
        shop.write({ 'b.kerf': hostile['b.kerf'].replace('100 x 100', '100 x 90').replaceAll('end', 'ended') });
        const { out, err } = await shop.kerfbook(args);
        expect(out + err).not.toBe('');
        expect(out).not.toMatch(steers);
        expect(err).not.toMatch(steers);
        expect(out + err).not.toMatch(/^\s*::/m);
        if (args.includes('json')) JSON.parse(out);
    });
});

describe('what every object knows is a name like any other', () => {
    it.each(['constructor', 'toString', '__proto__', 'hasOwnProperty'])('%s', async (name) => {
        const shop = repository({ 'stock/shop.kerf': shopFiles['stock/shop.kerf'], 'art/flag.svg': shopFiles['art/flag.svg'] });
        const command = await shop.kerfbook([name]);
        expect(command).toMatchObject({ code: 2, err: expect.stringContaining(`There is no command ${name}.`) });
        const text = coaster
            .replace('recipe coaster', `recipe ${name}`)
            .replaceAll(/\bdisc\b/g, name)
            .replaceAll(/\bart flag\b/g, `art ${name}`)
            .replaceAll(/\bhollow\b/g, `${name}-1`);
        shop.write({ 'a.kerf': text });
        shop.commit('named');
        expect(await shop.kerfbook(['check', 'a.kerf'])).toMatchObject({ out: expect.stringContaining('0 errors'), code: 0 });
        expect((await shop.kerfbook(['build', 'a.kerf'])).out).toContain(`made/${name}/job-sheet.html`);
        shop.write({ 'a.kerf': text.replace('depth 0.5 mm', 'depth 0.6 mm').replace('100 x 100', '100 x 90') });
        for (const format of ['text', 'html']) {
            const { code, out } = await shop.kerfbook(['diff', 'HEAD', '--recipe', name, '--format', format]);
            expect(out).toContain(name);
            expect(code).toBe(0);
        }
    });
});
