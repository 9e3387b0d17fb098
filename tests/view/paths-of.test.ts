import { describe, expect, it } from 'vitest';
import type { BenchView } from '../../shared/view/bench-view';
import { pathsOf } from '../../shared/view/paths-of';
import { memoryWorkshop } from '../kit/memory-workshop';
import { goodSamples, sampleText } from '../kit/samples';

async function viewOf(sample: string, had?: readonly string[]): Promise<BenchView> {
    const [text, art] = sampleText(sample);
    const { workshop, open } = await memoryWorkshop(art);
    const recipe = workshop.recipe(await open(text))!;
    const setting = { uri: 'file:///shop/sample.kerf', textVersion: 1, recipes: [] };
    return workshop.ask({ do: 'bench', recipe, setting, textFindings: [], ...(had === undefined ? {} : { had }) });
}

/** Every string anywhere in a value, but not what `paths` itself holds. */
function stringsIn(value: unknown, found = new Set<string>()): Set<string> {
    if (typeof value === 'string') found.add(value);
    if (typeof value === 'object' && value !== null) for (const each of Object.values(value)) stringsIn(each, found);
    return found;
}

describe('the names of path data in a picture', () => {
    it.each(goodSamples)('%s: all that the view holds anywhere are listed, and nothing else', async (sample) => {
        const { paths, ...rest } = await viewOf(sample);
        const pointedAt = [...stringsIn(rest)].filter((text) => text in paths).sort();
        expect(Object.keys(paths).sort()).toEqual(pointedAt);
        expect(pathsOf({ paths, ...rest }).sort()).toEqual(pointedAt);
    });

    it('what the page has by that list is not sent again, and everything else is', async () => {
        const whole = await viewOf('heron-tray');
        expect(Object.keys(whole.paths).length).toBeGreaterThan(5);
        const again = await viewOf('heron-tray', pathsOf(whole));
        expect(again.paths).toEqual({});
        expect(pathsOf(again)).toEqual(pathsOf(whole));
    });
});
