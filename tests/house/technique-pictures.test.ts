import { expect, test } from 'vitest';
import { type Technique, techniquePicture } from '../kit/technique-pictures';

const techniques: readonly Technique[] = [
    {
        picture: 'tone',
        page: 'tone',
        recipe: 'boat-board',
        after: ['Mask plank', 'Engrave lettering', 'Peel plank', 'Finish plank with tung-oil'],
    },
    {
        picture: 'filled',
        page: 'filled',
        recipe: 'tide-plate',
        after: ['Engrave tide', 'Cut rim', 'Fill tide with tide-blue', 'Sand plate', 'Finish plate with water-varnish'],
    },
    {
        picture: 'veneer-inlay',
        page: 'inlay',
        recipe: 'moon-panel',
        after: ['Engrave pocket', 'Engrave moon', 'Let moon into pocket', 'Sand panel', 'Finish panel with shellac-coat'],
    },
    {
        picture: 'cut-out-inlay',
        page: 'inlay',
        recipe: 'porthole',
        after: ['Cut opening', 'Cut plug', 'Let plug into opening', 'Sand tile'],
    },
    {
        picture: 'picture-in-greys',
        page: 'picture',
        recipe: 'creek-card',
        after: ['Engrave view', 'Cut edge', 'Finish card with bench-wax'],
    },
];

test.for(techniques)('the manual’s picture of $picture is of the recipe beside it (else: npm run words)', async (technique) => {
    const file = new URL(`../../extension/docs/pictures/${technique.picture}.svg`, import.meta.url);
    const svg = await techniquePicture(technique);
    // The package has a megabyte for all of its pictures.
    expect(svg.length).toBeLessThan(150_000);
    await expect(svg).toMatchFileSnapshot(file.pathname);
});
