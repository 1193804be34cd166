/** What acts next at an end, what to read next, and what to do before the car is driven. */
package spindlebook.advice;
