package spindlebook.page;

import java.util.List;

/**
 * The bar at the foot of a page: the thing to do, and the places beside this one.
 *
 * @param main the filled cell at its left; null where nothing may be done
 * @param here the word of the place this page is; empty where it is none of them
 */
public record Bar(Link main, List<Link> places, String here) {}
