/**
 * The page and the API: answers of the desk and the live snapshot, dressed for browsers and
 * programs. Bound to loopback unless told otherwise; reads only.
 */
@NullMarked
package meltkeeper.web;

import org.jspecify.annotations.NullMarked;
