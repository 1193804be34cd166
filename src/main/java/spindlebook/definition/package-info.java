/**
 * What an owner says of a car: its places, watch points, adjusters, tools, specs and allowances,
 * and what a new car starts with. Nothing here knows that entries exist.
 */
package spindlebook.definition;
