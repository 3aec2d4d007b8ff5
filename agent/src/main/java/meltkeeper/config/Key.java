package meltkeeper.config;

/**
 * One key of the file.
 *
 * @param <T> what its value is read into
 * @param section where it stands
 * @param form what is allowed, and how it is read
 * @param byDefault the value that counts where none is given, as it would be written; or {@link
 *     #REQUIRED}, or words on what then holds
 */
record Key<T>(Section section, String label, Form<T> form, String byDefault) {

  /** Stands for the default of a key that must be given. */
  static final String REQUIRED = "required";

  /** Stands for the default of a key that may stay away. */
  static final String NONE = "none";

  /** The value that counts where none is given. */
  T defaultValue() {
    return form.read(byDefault);
  }
}
