import { describe, expect, it } from 'vitest';
import { area, bounds } from '../../shared/geometry/measure';
import { writtenFigures } from '../../shared/review/written';
import { pngOf } from '../art/pictures';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

const drawing =
    '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="0 0 10 10"><rect width="4" height="10"/></svg>';

function planned(places: string, lines: string) {
    return planOf(
        `${shop}
recipe tags "Tags" {
  laser shed
  art dot "dot.svg"
  blank tray { of walnut-12 size 200 x 150 mm grain along width }
  ${places}
  engrave tag on tray { ${lines} tone 80 % }
  cut edge on tray { rectangle 16 x 12 mm ${lines.replace(/^art dot( turned 90 deg)?|inverse within \w+ \d+ mm/g, '')} air on }
}`,
        { 'dot.svg': drawing },
    );
}

const regions = ({ steps }: Awaited<ReturnType<typeof planned>>) => steps.map(({ laser }) => laser!.region);

describe('places that are said once', () => {
    it('are a grid about the middle of the blank, or about a place', async () => {
        const written = regions(await planned('', 'art dot at 100, 75 mm repeat 4 x 3 every 20 x 15 mm'));
        expect(regions(await planned('places slots on tray 4 x 3 every 20 x 15 mm', 'art dot at slots'))).toEqual(written);
        const aside = regions(await planned('', 'art dot at 60, 50 mm repeat 4 x 3 every 20 x 15 mm'));
        expect(regions(await planned('places slots on tray 4 x 3 every 20 x 15 mm at 60, 50 mm', 'art dot at slots'))).toEqual(
            aside,
        );
    });

    it('are a list, each copy turned about its own middle', async () => {
        const [tag, edge] = regions(
            await planned('places slots on tray at 20, 20 mm and 180, 20 mm and 60, 130 mm', 'art dot turned 90 deg at slots'),
        );
        expect(tag!.rings).toHaveLength(3);
        expect(area(tag!)).toBeCloseTo(3 * 40, 6);
        const box = bounds(tag!)!;
        expect([box.minX, box.maxX, box.minY, box.maxY].map((value) => Math.round(value))).toEqual([15, 185, 15, 129]);
        expect(bounds(edge!)).toEqual({ minX: 12, minY: 14, maxX: 188, maxY: 136 });
    });

    it('that overlap are burnt once, and each has a boundary of its own', async () => {
        const [near] = regions(await planned('places slots on tray at 20, 20 mm and 22, 20 mm', 'art dot at slots'));
        expect(area(near!)).toBeCloseTo(60, 6);
        const [around] = regions(
            await planned(
                'places slots on tray at 40, 40 mm and 120, 70 mm',
                'art dot inverse within rectangle 12 x 12 mm at slots',
            ),
        );
        expect(area(around!)).toBeCloseTo(2 * (144 - 40), 6);
    });

    it('read in a review like the grid that they stand for', async () => {
        const told = async (places: string, lines: string) => {
            const [tag] = (await planned(places, lines)).steps;
            return writtenFigures(tag!.step).find(({ label }) => label === 'art');
        };
        expect(await told('places slots on tray 4 x 3 every 20 x 15 mm', 'art dot at slots')).toEqual(
            await told('', 'art dot repeat 4 x 3 every 20 x 15 mm'),
        );
        const list = await told('places slots on tray at 20, 20 mm and 60, 130 mm', 'art dot at slots');
        expect(list?.text).toBe('dot at 20 mm, 20 mm and 60 mm, 130 mm');
    });

    it('hold a picture in dots, too', async () => {
        const dots = async (places: string, at: string) => {
            const plan = await planOf(
                `${shop}
recipe card "Card" {
  laser shed
  art photo "photo.png" { width 20 mm dither floyd-steinberg }
  blank tray { of walnut-12 size 200 x 150 mm grain along height }
  ${places}
  engrave face on tray { art photo ${at} tone 80 % pitch 0.2 mm air off }
}`,
                { 'photo.png': pngOf({ columns: 2, rows: 2, depth: 8, colour: 0 }, Uint8Array.of(0, 40, 200, 0, 130, 90)) },
            );
            return plan.steps[0]!.laser!.pictures!.map(({ grid }) => grid);
        };
        const list = await dots('places two on tray at 50, 75 mm and 90, 75 mm', 'at two');
        expect(list).toEqual(await dots('', 'at 70, 75 mm repeat 2 x 1 every 40 x 40 mm'));
    });
});
