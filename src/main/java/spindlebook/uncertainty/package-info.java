/**
 * How sure a figure is, where its doubt comes from, and what may be decided with it.
 *
 * <p>Knows no unit: a figure is in millimetres or radians, as the name says that holds it.
 */
package spindlebook.uncertainty;
