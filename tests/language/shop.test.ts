import { describe, expect, it } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { expectMarked } from './marked';
import { open, start } from './services';

async function shopOf(text: string) {
    return lowerFile(await open(`${text}\nrecipe r { make 2 }`), await start())[0]?.shop;
}

const figures = 'hourly 32  laser hourly 14  overhead 15 %  markup 60 %  workday 8 h';

describe('the shop', () => {
    it('is read with its figures in base units', async () => {
        const shop = await shopOf(`shop estuary { currency EUR  ${figures}  price 12 for 2.5 m2 of foil }`);
        expect(shop?.currency?.value).toBe('EUR');
        expect(shop?.hourly?.value).toBe(32);
        expect(shop?.laserHourly?.value).toBe(14);
        expect(shop?.overhead?.value).toBeCloseTo(0.15, 12);
        expect(shop?.markup?.value).toBeCloseTo(0.6, 12);
        expect(shop?.workday?.value).toBe(28_800);
        expect(shop?.foilPrice).toMatchObject({ paid: { value: 12 }, amount: { value: 2.5e6, dimension: 'area' } });
        expect(shop?.tapePrice).toBeUndefined();
    });
    it('has nothing to say when it is whole', () => expectMarked(`shop estuary { currency EUR  ${figures} }`));
    it('takes money with the code behind it', async () => {
        await expectMarked(`shop estuary { currency JPY  hourly 4000 JPY }`);
        expect((await shopOf('shop estuary { currency JPY  hourly 4000 JPY }'))?.hourly).toMatchObject({
            value: 4000,
            unit: 'JPY',
        });
    });
    it('refuses a unit that is no money, and money that is less than nothing', async () => {
        await expectMarked(`
shop estuary { currency EUR  hourly 32 mm }
                                       ^^ wrong-unit: an amount of money`);
        await expectMarked(`
shop estuary { currency EUR  hourly -3 }
                                    ^^ impossible-value: negative`);
    });
    it('knows the codes of ISO 4217, and offers the one that was meant', async () => {
        const [small] = await expectMarked(`
shop estuary { currency eur  hourly 32 }
                        ^^^ unknown-word: Euro`);
        expect(small?.fixes[0]?.changes[0]).toMatchObject({ text: 'EUR' });
        await expectMarked(`
shop estuary { currency DEM  hourly 32 }
                        ^^^ unknown-word: ISO 4217`);
        expect(await shopOf('shop estuary { currency DEM  hourly 32 }')).not.toHaveProperty('currency');
    });
    it('takes no wages in another currency', () =>
        expectMarked(`
shop estuary { currency EUR  hourly 32 USD }
                                    ^^^^^^ other-currency: EUR`));
    it('says that it lacks a currency', () =>
        expectMarked(`
shop estuary { hourly 32 }
     ^^^^^^^ missing-property: currency`));
    it('asks about wages that nobody pays, where it knows what the currency is worth', async () => {
        await expectMarked(`
shop estuary { currency EUR  hourly 3200 }
                                    ^^^^ unlikely-magnitude: 5 to 250 EUR`);
        await expectMarked('shop estuary { currency KRW  hourly 32000 }');
    });
    it('asks about a day of more hours than anybody works', () =>
        expectMarked(`
shop estuary { currency EUR  hourly 30  workday 20 h }
                                                ^^ unlikely-magnitude: workday`));
    it('says which of two is reckoned with', async () => {
        await expectMarked(`
shop estuary { currency EUR  hourly 32 }
shop loft { currency USD  hourly 40 }
     ^^^^ second-shop: estuary`);
        expect((await shopOf('shop estuary { currency EUR }\nshop loft { currency USD }'))?.name).toBe('estuary');
    });
    it('has one price of each', () =>
        expectMarked(`
shop s { currency EUR  hourly 9  price 2 for 1 m2 of foil  price 3 for 1 m2 of tape
price 4 for 1 m2 of foil
^^^^^ duplicate-property: foil
}`));
    it('buys foil by area and paper by the sheet', async () => {
        await expectMarked(`
shop s { currency EUR  hourly 9  price 2 for 3 sheets of foil }
                                             ^^^^^^^^ wrong-unit: area`);
        await expectMarked(`
shop s { currency EUR  hourly 9  price 2 for 3 m2 of abrasive }
                                             ^^^^ wrong-unit: sheets`);
    });
});

const shop = 'shop s { currency EUR  hourly 9 }\n';

describe('a price', () => {
    it('of a board is for sheets or an area', async () => {
        await expectMarked(`${shop}board b { wood white-oak  thickness 9 mm  price 48 for 1 sheet }`);
        await expectMarked(`${shop}board b { wood white-oak  thickness 9 mm  price 48 for 4 sheets }`);
        await expectMarked(`${shop}board b { wood white-oak  thickness 9 mm  price 62 for 1 m2 }`);
        await expectMarked(`${shop}
board b { wood white-oak  thickness 9 mm  price 62 for 1 kg }
                                                         ^^ wrong-unit: a number of sheets or an area`);
    });
    it('needs to say for how much', () =>
        expectMarked(`${shop}
board b { wood white-oak  thickness 9 mm  price 62 for 1 }
                                                       ^ missing-unit: sheet`));
    it('in no currency is told so, once no shop is in sight', async () => {
        await expectMarked(`
board b { wood white-oak  thickness 9 mm  price 62 for 1 m2 }
                                                ^^ price-without-currency: shop`);
        await expectMarked('board b { wood white-oak  thickness 9 mm  price 62 EUR for 1 m2 }');
    });
    it('in another currency is not converted', () =>
        expectMarked(`${shop}
board b { wood white-oak  thickness 9 mm  price 62 USD for 1 m2 }
                                                ^^^^^^ other-currency: left out`));
    it('for nothing is none', () =>
        expectMarked(`${shop}
board b { wood white-oak  thickness 9 mm  price 62 for 0 m2 }
                                                       ^^^^ impossible-value: more than nothing`));
    it('of a fluid is by mass or by volume, and needs a density where it is used the other way', async () => {
        await expectMarked(`${shop}glue g { kind wood-glue  price 9 for 500 g }`);
        await expectMarked(`${shop}glue g { kind wood-glue  price 9 for 0.5 l }`);
        await expectMarked(`${shop}
glue g { price 9 for 0.5 l }
                     ^^^^^ missing-property: density`);
    });
    it('of a resin and of its pigment are two', async () => {
        const text = `${shop}resin r { kind slow-epoxy  price 39 for 1.5 kg  price 8 for 50 g of pigment }`;
        await expectMarked(text);
    });
});

describe('the recoat window', () => {
    it('is a range of time', () => expectMarked('resin r { kind slow-epoxy  recoat 4 .. 10 h }'));
    it('is no length', () =>
        expectMarked(`
resin r { kind slow-epoxy  recoat 4 mm }
                                    ^^ wrong-unit: a time`));
});
