import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { severalAtOnce } from '../../server/cli/several-at-once';
import { LocalAsker } from '../../server/engine/asker';
import { CoresAsker } from '../../server/engine/cores-asker';
import { planOf } from '../kit/plan-of';
import { goodSamples, sampleText } from '../kit/samples';
import { TemporaryRepository } from '../kit/temporary-repository';

const worker = new URL('../../dist/worker.cjs', import.meta.url).pathname;

describe('several at once', () => {
    it('are never more than were said, and are answered in their order', async () => {
        let open = 0;
        let most = 0;
        const answers = await severalAtOnce([30, 5, 20, 1, 10], 2, async (wait) => {
            most = Math.max(most, ++open);
            await new Promise((resolve) => setTimeout(resolve, wait));
            open--;
            return wait;
        });
        expect(answers).toEqual([30, 5, 20, 1, 10]);
        expect(most).toBe(2);
        expect(await severalAtOnce([], 2, async () => 1)).toEqual([]);
    });

    it('fail as one, and none is begun after that', async () => {
        const begun: number[] = [];
        const all = severalAtOnce([1, 2, 3, 4, 5], 2, async (each) => {
            begun.push(each);
            if (each === 2) throw new Error('the second');
        });
        await expect(all).rejects.toThrow('the second');
        expect(begun.length).toBeLessThan(5);
    });
});

it('every core answers as this thread does, also after a pause in which the workers have ended', async () => {
    const ports = () => process.getActiveResourcesInfo().filter((each) => each === 'MessagePort').length;
    const before = ports();
    const asker = new CoresAsker(worker, 2);
    const local = new LocalAsker();
    const recipes = await Promise.all(goodSamples.slice(0, 4).map(async (name) => (await planOf(...sampleText(name))).recipe));
    const askAll = () => Promise.all(recipes.map((recipe) => asker.ask({ do: 'examine', recipe }, [])));
    const here = await Promise.all(recipes.map((recipe) => local.ask({ do: 'examine', recipe }, [])));
    expect(await askAll()).toEqual(here);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(ports()).toBeLessThanOrEqual(before);
    expect(await askAll()).toEqual(here);
});

describe('a folder of many recipes', () => {
    const shop = new TemporaryRepository({});
    const names = Array.from({ length: 40 }, (_, at) => `r${at}.kerf`);
    beforeAll(() => {
        const text = readFileSync('samples/gate-sign.kerf', 'utf8').replaceAll(/^run [\s\S]*?^\}/gm, '');
        mkdirSync(path.join(shop.folder, 'art'), { recursive: true });
        for (const art of text.matchAll(/"(art\/[^"]+)"/g))
            writeFileSync(path.join(shop.folder, art[1]!), readFileSync(`samples/${art[1]}`));
        writeFileSync(path.join(shop.folder, 'workshop.kerf'), readFileSync('samples/workshop.kerf', 'utf8'));
        for (const [at, name] of names.entries())
            writeFileSync(
                path.join(shop.folder, name),
                text
                    .replace(/^recipe [\w-]+/m, `recipe sign-${at}`)
                    .replace(/^ {2}laser .*/m, at % 20 === 7 ? '  laser nowhere' : '$&'),
            );
    });
    afterAll(() => shop.remove());

    it('is checked as each of them alone, and the command ends', async () => {
        const many = await shop.kerfbook(['check', '--format', 'json', ...names]);
        const few = await shop.kerfbook(['check', '--format', 'json', ...names.slice(0, 12)]);
        expect(many.code).toBe(1);
        type Report = { findings: { file: string; rule: string; line: number }[] };
        const findings = ({ out }: { out: string }) => (JSON.parse(out) as Report).findings;
        const first = new Set(names.slice(0, 12));
        expect(findings(many).filter(({ file }) => first.has(file))).toEqual(findings(few));
        expect(findings(many).filter(({ file }) => !first.has(file)).length).toBeGreaterThan(0);
    }, 60_000);
});
