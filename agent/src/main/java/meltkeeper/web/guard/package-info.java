/**
 * Who may ask what of the web server: hosts and origins, the token for writes, TLS, and the headers
 * that tell a browser what the page may do.
 */
@NullMarked
package meltkeeper.web.guard;

import org.jspecify.annotations.NullMarked;
