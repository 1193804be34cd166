/**
 * What would be done next, in which order: the steps of a round, changes that bring settings back,
 * what is checked again after a drive; and the book as it would be then.
 */
package spindlebook.plan;
