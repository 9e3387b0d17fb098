import { describe, expect, it } from 'vitest';
import { pathsOf } from '../../shared/view/paths-of';
import type { SentPicture } from '../../shared/view/sent-picture';
import { memoryWorkshop } from '../kit/memory-workshop';
import { goodSamples, sampleText } from '../kit/samples';

async function viewOf(sample: string, had?: readonly string[]): Promise<SentPicture> {
    const [text, art] = sampleText(sample);
    const { workshop, open } = await memoryWorkshop(art);
    const recipe = workshop.recipe(await open(text))!;
    const setting = { uri: 'file:///shop/sample.kerf', textVersion: 1, recipes: [] };
    return workshop.ask({ do: 'bench', recipe, setting, textFindings: [], ...(had === undefined ? {} : { had }) });
}

/** The frames of a picture that came whole, with their pieces in them. */
function framesOf({ frames, pieces }: SentPicture) {
    return frames.map((frame) => ({ ...frame, pieces: frame.pieces.map((name) => pieces[name]!) }));
}

/** Every string anywhere in a value, but not what `paths` itself holds. */
function stringsIn(value: unknown, found = new Set<string>()): Set<string> {
    if (typeof value === 'string') found.add(value);
    if (typeof value === 'object' && value !== null) for (const each of Object.values(value)) stringsIn(each, found);
    return found;
}

describe('the names of path data in a picture', () => {
    it.each(goodSamples)('%s: all that the view holds anywhere are listed, and nothing else', async (sample) => {
        const picture = await viewOf(sample);
        const { paths, ...rest } = picture;
        const pointedAt = [...stringsIn(rest)].filter((text) => text in paths).sort();
        expect(Object.keys(paths).sort()).toEqual(pointedAt);
        expect(pathsOf({ inlays: rest.inlays, frames: framesOf(picture) }).sort()).toEqual(pointedAt);
    });

    it('what the page has by that list is not sent again, and everything else is', async () => {
        const whole = await viewOf('heron-tray');
        expect(Object.keys(whole.paths).length).toBeGreaterThan(5);
        const had = pathsOf({ inlays: whole.inlays, frames: framesOf(whole) });
        const again = await viewOf('heron-tray', had);
        expect(again.paths).toEqual({});
        expect(again.pieces).toEqual(whole.pieces);
        const most = Object.keys(whole.pieces).slice(1);
        const thrice = await viewOf('heron-tray', [...had, ...most]);
        expect(Object.keys(thrice.pieces)).toEqual(Object.keys(whole.pieces).slice(0, 1));
        expect(thrice.frames).toEqual(whole.frames);
    });
});
