import schema from '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json';
import Ajv from 'ajv-draft-04';
import addFormats from 'ajv-formats';
import MarkdownIt from 'markdown-it';
import type { Log } from 'sarif';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { shop } from '../kit/shop';
import type { TemporaryRepository } from '../kit/temporary-repository';
import { bolder, coaster, otherRecipe, repository, shopFiles } from './shop-files';

/** An error, a warning, an exception, a guess, and words that mean something in every format. */
const faulty = `use "stock/shop.kerf"
recipe coaster "Coaster" {
  laser shed
  art flag "art/<b>&'[x]{0}.svg"
  art other "art/flag.svg"
  blank disc { of walnut-12 size 100 x 100 mm grain along width }
  engrave hollow on disc { art other depth 0.5 mm air on scan along grain allow scan-along-grain because "a | b <i> @team" }
  blank tile { of ash-10 size 100 x 100 mm grain along width }
  engrave second on tile { art other depth 0.5 mm air off }
}
`;
const faultyFiles = { ...shopFiles, 'coaster.kerf': faulty };

interface XmlElement {
    readonly name: string;
    readonly attributes: Readonly<Record<string, string>>;
    text: string;
}

/** Well-formed XML as a flat list of elements; throws where it is not. */
function readXml(text: string): XmlElement[] {
    const all: XmlElement[] = [];
    const stack: XmlElement[] = [];
    const parser = new SaxesParser();
    parser.on('error', (error) => {
        throw error;
    });
    parser.on('opentag', ({ name, attributes }) => {
        const element = { name, attributes, text: '' };
        all.push(element);
        stack.push(element);
    });
    parser.on('text', (part) => {
        const top = stack.at(-1);
        if (top !== undefined) top.text += part;
    });
    parser.on('closetag', () => void stack.pop());
    parser.write(text).close();
    return all;
}

describe('kerfbook check --format', () => {
    it('sarif: valid by the published schema, with a page for every rule and places from the repository’s top', async () => {
        const repo = repository({ ...faultyFiles, 'below/x.txt': '' });
        const { code, out } = await repo.kerfbook(['check', '--format', 'sarif', '../coaster.kerf'], 'below');
        expect(code).toBe(1);
        const log = JSON.parse(out) as Log;
        const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
        addFormats(ajv);
        const validate = ajv.compile(schema);
        validate(log);
        expect(validate.errors ?? []).toEqual([]);

        const [run] = log.runs;
        const rules = run!.tool.driver.rules!;
        const paged = rules.find(({ id }) => id === 'air-while-engraving');
        expect(paged?.help?.markdown).toContain('**How to mend it.**');
        const results = run!.results!;
        expect(results.length).toBeGreaterThan(1);
        // 3.27.5: the index must lead to the rule of that id.
        for (const { ruleId, ruleIndex } of results) expect(rules[ruleIndex!]?.id).toBe(ruleId);
        const air = results.find(({ ruleId }) => ruleId === 'air-while-engraving');
        expect(air?.level).toBe('warning');
        const place = air?.locations?.[0]?.physicalLocation;
        expect(place?.artifactLocation).toEqual({ uri: 'coaster.kerf', uriBaseId: '%SRCROOT%' });
        const { startLine, startColumn, endColumn } = place!.region!;
        expect(faulty.split('\n')[startLine! - 1]!.slice(startColumn! - 1, endColumn! - 1)).toBe('air on');
        // 3.11.5 and 3.11.6: braces doubled, square brackets escaped.
        expect(results.find(({ ruleId }) => ruleId === 'art-missing')?.message.text).toContain('\\[x\\]{{0}}');
        // What is allowed is there too, with its reason and the line that allows it; nothing else is suppressed.
        const suppressed = results.filter(({ suppressions }) => (suppressions?.length ?? 0) > 0);
        expect(suppressed).toHaveLength(1);
        expect(results.every(({ suppressions }) => Array.isArray(suppressions))).toBe(true);
        expect(suppressed[0]).toMatchObject({
            ruleId: 'scan-along-grain',
            suppressions: [
                {
                    kind: 'inSource',
                    justification: 'a | b <i> @team',
                    location: { physicalLocation: { artifactLocation: { uri: 'coaster.kerf' }, region: { startLine: 7 } } },
                },
            ],
        });
    });

    it('annotations: one line for each finding, in which nothing can begin another', async () => {
        const repo = repository(faultyFiles);
        const { out, code } = await repo.kerfbook(['check', '--format', 'annotations', 'coaster.kerf']);
        const lines = out.trimEnd().split('\n');
        expect(lines.every((line) => /^::(?:error|warning|notice) file=coaster\.kerf,line=\d+,[^:]*::\S/.test(line))).toBe(true);
        expect(lines.find((line) => line.includes('title=air-while-engraving'))).toMatch(
            /^::warning file=coaster\.kerf,line=7,endLine=7,col=\d+/,
        );
        expect(lines.find((line) => line.startsWith('::error'))).toContain("art/<b>&'[x]{0}.svg");
        expect(out).not.toContain('scan-along-grain');
        expect(code).toBe(1);
        repo.write({ 'a,b:c%.kerf': 'recipe x {' });
        expect((await repo.kerfbook(['check', '--format', 'annotations', 'a,b:c%.kerf'])).out).toContain(
            'file=a%2Cb%3Ac%25.kerf,',
        );
    });

    it('checkstyle: well-formed, a file for each file and an error for each finding', async () => {
        const repo = repository(faultyFiles);
        const all = readXml((await repo.kerfbook(['check', '--format', 'checkstyle'])).out);
        expect(all.filter(({ name }) => name === 'file').map(({ attributes }) => attributes.name)).toEqual([
            'coaster.kerf',
            'plate.kerf',
            'stock/shop.kerf',
        ]);
        const air = all.find(({ attributes }) => attributes.source === 'kerfbook.air-while-engraving');
        expect(air?.attributes).toMatchObject({ severity: 'warning', line: '7' });
        expect(all.filter(({ name, attributes }) => name === 'error' && attributes.severity === 'error')).toHaveLength(1);
    });

    it('markdown: pinned settings stand beside what solving would give now', async () => {
        const pinned = coaster.replace('depth 0.5 mm', 'depth 0.5 mm power 80 % speed 500 mm/s passes 2');
        const repo = repository({ ...shopFiles, 'coaster.kerf': pinned });
        const { out } = await repo.kerfbook(['check', '--format', 'markdown', 'coaster.kerf']);
        expect(out).toContain('### Pinned: 3 settings');
        const solved = (await repository().kerfbook(['show', '--all', 'coaster.kerf'])).out;
        const speed = /= speed: (\d+ mm\/s)/.exec(solved)![1]!;
        expect(out).toContain(`| speed | 500 mm/s | ${speed} |`);
        expect(out).toMatch(/\| passes \| 2 \| \d+ \|/);
        expect((await repo.kerfbook(['diff', 'coaster.kerf', 'plate.kerf', '--format', 'markdown'])).code).toBe(0);
    });

    it('junit: well-formed, one failure for each error, warnings as output; all of them failures when strict', async () => {
        const repo = repository(faultyFiles);
        const read = async (...args: string[]) => readXml((await repo.kerfbook(['check', '--format', 'junit', ...args])).out);
        const loose = await read();
        const failures = loose.filter(({ name }) => name === 'failure');
        expect(failures).toHaveLength(1);
        expect(failures[0]!.attributes.type).toBe('art-missing');
        expect(failures[0]!.attributes.message).toContain(`art/<b>&'[x]{0}.svg`);
        expect(loose.find(({ name }) => name === 'system-out')?.text).toContain('The air is on while hollow is engraved');
        const [suites] = loose;
        expect(suites).toMatchObject({ name: 'testsuites', attributes: { failures: '1', errors: '0' } });
        expect(loose.filter(({ name }) => name === 'testcase')).toHaveLength(Number(suites!.attributes.tests));
        expect(loose.filter(({ name }) => name === 'testsuite').map(({ attributes }) => attributes.name)).toEqual([
            'coaster.kerf',
            'plate.kerf',
            'stock/shop.kerf',
        ]);
        const strict = await read('--strict');
        expect(strict.filter(({ name }) => name === 'failure').length).toBeGreaterThan(1);
    });

    it('markdown: a summary with every exception and the number of guesses', async () => {
        const repo = repository(faultyFiles);
        const { out } = await repo.kerfbook(['check', '--format', 'markdown']);
        expect(out).toMatch(/^## Kerfbook: 1 error, \d warnings?(, \d notes?)? in 3 files$/m);
        expect(out).toContain('### Allowed: 1 exception');
        expect(out).toMatch(/^### Guessed: 1 setting without a coupon$/m);
        expect(out.indexOf('| error |')).toBeLessThan(out.indexOf('| warning |'));
        const html = new MarkdownIt({ html: true, linkify: true }).render(out);
        expect(html).not.toMatch(/<(?:b|i)>/);
        expect(html).toContain('a | b &lt;i&gt; @\u2060team');
        expect(html.match(/<tr>/g)).toHaveLength(
            1 + out.split('\n').filter((line) => /^\| (?:error|warning|info|hint) /.test(line)).length,
        );
    });

    it('json: places of related words too, exceptions and guesses by recipe', async () => {
        const repo = repository(faultyFiles);
        const report = JSON.parse((await repo.kerfbook(['check', '--format', 'json', 'coaster.kerf'])).out);
        expect(report).toMatchObject({ schema: 1, files: ['coaster.kerf'], counts: { error: 1 } });
        expect(report.recipes).toEqual([
            {
                file: 'coaster.kerf',
                recipe: 'coaster',
                allows: [{ rule: 'scan-along-grain', reason: 'a | b <i> @team', step: 0, title: 'Engrave hollow' }],
                guesses: ['Engrave second'],
                pinned: [],
            },
        ]);
        expect(report.allowed).toEqual([
            expect.objectContaining({
                rule: 'scan-along-grain',
                severity: 'warning',
                reason: 'a | b <i> @team',
                allowed: expect.objectContaining({ file: 'coaster.kerf', line: 7 }),
            }),
        ]);
    });

    it('text: exceptions and guesses are counted', async () => {
        const repo = repository(faultyFiles);
        expect((await repo.kerfbook(['check'])).out).toMatch(
            /\n1 exception allowed, 1 setting guessed without a square or a cut that was tried\n$/,
        );
        expect((await repo.kerfbook(['check', 'plate.kerf'])).out).not.toContain('exception');
    });
});

describe('kerfbook check --since', () => {
    /** The files that were looked at. */
    async function checked(repo: TemporaryRepository, revision: string, below?: string): Promise<string[]> {
        const { out } = await repo.kerfbook(['check', '--format', 'json', '--since', revision], below);
        return JSON.parse(out).files;
    }

    it('nothing changed: nothing to check, and that is fine', async () => {
        const repo = repository(faultyFiles);
        const { code, out } = await repo.kerfbook(['check', '--since', 'HEAD']);
        expect(out).toBe('0 files: 0 errors, 0 warnings\n');
        expect(code).toBe(0);
    });

    it('a recipe itself, its art, the stock that it uses', async () => {
        const repo = repository();
        repo.write({ 'plate.kerf': otherRecipe.replace('0.1 mm', '0.2 mm') });
        expect(await checked(repo, 'HEAD')).toEqual(['plate.kerf']);
        repo.commit('plate');
        repo.write({ 'art/flag.svg': bolder });
        expect(await checked(repo, 'HEAD')).toEqual(['coaster.kerf']);
        repo.commit('flag');
        repo.write({ 'stock/shop.kerf': shop.replace('power 45 W', 'power 40 W') });
        expect(await checked(repo, 'HEAD')).toEqual(['coaster.kerf', 'plate.kerf', 'stock/shop.kerf']);
        expect(await checked(repo, 'HEAD~1')).toEqual(['coaster.kerf', 'plate.kerf', 'stock/shop.kerf']);
    });

    it('art and stock that are gone or were renamed', async () => {
        const repo = repository();
        repo.git('mv', 'art/flag.svg', 'art/banner.svg');
        const { code, out } = await repo.kerfbook(['check', '--since', 'HEAD']);
        expect(out).toContain('[art-missing]');
        expect(code).toBe(1);
        repo.git('reset', '--quiet', '--hard');
        repo.git('rm', '--quiet', 'stock/shop.kerf');
        expect(await checked(repo, 'HEAD')).toEqual(['coaster.kerf', 'plate.kerf']);
    });

    it('files that git does not know yet', async () => {
        const repo = repository();
        repo.write({ 'new folder/third (x).kerf': coaster.replaceAll('"stock', '"../stock').replaceAll('"art', '"../art') });
        expect(await checked(repo, 'HEAD')).toEqual(['new folder/third (x).kerf']);
    });

    it('a branch: what this one changed since it left, not what went on over there', async () => {
        const repo = repository();
        repo.git('switch', '--quiet', '--create', 'work');
        repo.write({ 'plate.kerf': otherRecipe.replace('0.1 mm', '0.2 mm') });
        repo.commit('ours');
        repo.git('switch', '--quiet', 'main');
        repo.write({ 'coaster.kerf': coaster.replace('0.5 mm', '0.6 mm') });
        repo.commit('theirs');
        repo.git('switch', '--quiet', 'work');
        expect(await checked(repo, 'main')).toEqual(['plate.kerf']);
    });

    it('from a folder below, only what lies there', async () => {
        const repo = repository();
        repo.write({ 'stock/shop.kerf': shop.replace('power 45 W', 'power 40 W') });
        expect(await checked(repo, 'HEAD', 'stock')).toEqual(['shop.kerf']);
    });

    it.each([['nowhere'], ['--help'], ['']])('no such revision: %j', async (revision) => {
        const repo = repository();
        const { code, err } = await repo.kerfbook(['check', `--since=${revision}`]);
        expect(err).toContain('revision');
        expect(code).toBe(2);
    });
});
