const plus = 43;
const comma = 44;
const minus = 45;
const dot = 46;
const zero = 48;
const nine = 57;
const exponent = 101;

/** Whole numbers of so many digits are exact in a double, and so are powers of ten up to 10^22. */
const exactDigits = 15;
const powers = Array.from({ length: exactDigits + 1 }, (_, i) => 10 ** i);

/** Reads the numbers of SVG's compact lists, where `1-.5.5` is three of them. */
export class NumberScanner {
    index = 0;

    constructor(private readonly text: string) {}

    done(): boolean {
        return this.index >= this.text.length;
    }

    space(): void {
        while (isSpace(this.text.charCodeAt(this.index))) this.index++;
    }

    /** Skips one comma and the space after it, if one is there. */
    comma(): void {
        if (this.text.charCodeAt(this.index) !== comma) return;
        this.index++;
        this.space();
    }

    /** Whether a comma or the beginning of a number follows. */
    more(): boolean {
        const code = this.text.charCodeAt(this.index);
        return isDigit(code) || code === comma || code === dot || code === minus || code === plus;
    }

    /** An arc's flag is one digit, which may be glued to what follows. */
    flag(): number | undefined {
        const code = this.text.charCodeAt(this.index);
        if (code !== zero && code !== zero + 1) return undefined;
        this.index++;
        return code - zero;
    }

    /** The number that begins here; undefined, without moving, if none does. Too large a one is Infinity. */
    number(): number | undefined {
        const { text } = this;
        const start = this.index;
        let i = start;
        let code = text.charCodeAt(i);
        const negative = code === minus;
        if (negative || code === plus) code = text.charCodeAt(++i);
        let whole = 0;
        const digits = i;
        while (isDigit(code)) {
            whole = whole * 10 + (code - zero);
            code = text.charCodeAt(++i);
        }
        let count = i - digits;
        let decimals = 0;
        if (code === dot) {
            const fraction = i + 1;
            code = text.charCodeAt(++i);
            while (isDigit(code)) {
                whole = whole * 10 + (code - zero);
                code = text.charCodeAt(++i);
            }
            decimals = i - fraction;
            count += decimals;
        }
        if (count === 0) return undefined;
        const plain = i;
        if ((code | 32) === exponent) i = this.afterExponent(i);
        this.index = i;
        // Two numbers that a double holds exactly give the double nearest to their quotient, as Number() would.
        if (i > plain || count > exactDigits) return Number(text.slice(start, i));
        const value = whole / powers[decimals]!;
        return negative ? -value : value;
    }

    /** Where an exponent that begins with the e at `at` ends; `at` itself if there is none, since units begin with an e too. */
    private afterExponent(at: number): number {
        let i = at + 1;
        let code = this.text.charCodeAt(i);
        if (code === plus || code === minus) code = this.text.charCodeAt(++i);
        if (!isDigit(code)) return at;
        while (isDigit(code)) code = this.text.charCodeAt(++i);
        return i;
    }
}

/** A list such as `points` or `stroke-dasharray` up to its first error; `broken` is the error's offset. */
export function readNumbers(text: string): { readonly numbers: readonly number[]; readonly broken: number | undefined } {
    const scan = new NumberScanner(text);
    const numbers: number[] = [];
    scan.space();
    while (!scan.done()) {
        if (numbers.length > 0) scan.comma();
        const at = scan.index;
        const value = scan.number();
        if (value === undefined) return { numbers, broken: at };
        numbers.push(value);
        scan.space();
    }
    return { numbers, broken: undefined };
}

function isDigit(code: number): boolean {
    return code >= zero && code <= nine;
}

function isSpace(code: number): boolean {
    return code === 32 || (code >= 9 && code <= 13);
}
