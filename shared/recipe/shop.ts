import type { Quantity } from '../quantity/quantity';
import type { Written } from '../quantity/where';
import type { Named, Price } from './stock';

/** What the shop reckons with. A figure that is not written is absent. */
export interface Shop extends Named {
    /** ISO 4217, such as EUR. */
    readonly currency?: Written<string>;
    /** For an hour of somebody's work, money. */
    readonly hourly?: Quantity;
    /** For an hour of the laser itself; the one who minds it comes on top. */
    readonly laserHourly?: Quantity;
    readonly overhead?: Quantity;
    readonly markup?: Quantity;
    /** How long hands are at work in a day, s. */
    readonly workday?: Quantity;
    /** Climate in which things set and dry: degC, and relative humidity 0 to 1. */
    readonly temperature?: Quantity;
    readonly humidity?: Quantity;
    /** What is no stock of its own and yet is bought. */
    readonly foilPrice?: Price;
    readonly tapePrice?: Price;
    readonly abrasivePrice?: Price;
}
