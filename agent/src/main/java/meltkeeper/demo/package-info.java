/**
 * A shop that does not exist: simulated printers, the ways they publish, and a broker of their own.
 * What the demo shows, and what the tests print on; nothing on the real path knows of it.
 */
@NullMarked
package meltkeeper.demo;

import org.jspecify.annotations.NullMarked;
