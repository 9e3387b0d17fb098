import { phrase } from '../../shared/recipe/phrase';
import type { DepthReading } from '../../shared/view/coupon-protocol';
import { type Burn, isBurn, isCoupon, isFile } from '../generated/ast';
import { quantityOf } from '../lowering/quantity';
import type { KerfServices } from '../services';

const want = () =>
    phrase`A depth, such as 0.31 mm, 12 thou or 1/64 in, where a bare number is in mm; or a tone, such as tone 60 %. Leave it empty to skip the square.`;
const longest = 60;

/** Takes what somebody typed for a depth, as the language itself would read it. A bare number is in mm, a comma is a point. */
export function readDepth(typed: string, services: KerfServices): DepthReading {
    const text = typed.trim().replaceAll(/(\d),(\d)/g, '$1.$2');
    if (text === '' || text.length > longest || /[{}\r\n"]|\/[/*]/.test(text)) return { problem: want() };
    const depth = /[A-Za-zµ%]/.test(text) ? text : inMillimetres(text);
    const burn = burnThatGives(depth, services);
    const length = quantityOf(burn?.depth);
    if (length !== undefined) return { depth, value: length.value };
    const tone = quantityOf(burn?.tone);
    return tone === undefined ? { problem: want() } : { depth, tone: tone.value };
}

/** `0.31 +- 0.02` as `0.31 mm +- 0.02 mm`. */
function inMillimetres(text: string): string {
    const [value = '', tolerance] = text.split(/\s*(?:\+-|±)\s*/);
    return tolerance === undefined ? `${value.trim()} mm` : `${value.trim()} mm +- ${tolerance.trim()} mm`;
}

function burnThatGives(depth: string, services: KerfServices): Burn | undefined {
    const { value, lexerErrors, parserErrors } = services.parser.LangiumParser.parse(
        `coupon a on b { burn 1 % at 1 mm/s gives ${depth} }`,
    );
    if (lexerErrors.length > 0 || parserErrors.length > 0 || !isFile(value) || value.entries.length !== 1) return undefined;
    const [coupon] = value.entries;
    if (!isCoupon(coupon) || coupon.items.length !== 1) return undefined;
    const [burn] = coupon.items;
    return isBurn(burn) ? burn : undefined;
}
