/**
 * The API: the desk's questions and acts as JSON over HTTP, with the same nouns as the commands.
 */
@NullMarked
package meltkeeper.web.api;

import org.jspecify.annotations.NullMarked;
