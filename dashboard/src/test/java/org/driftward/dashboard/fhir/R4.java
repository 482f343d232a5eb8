package org.driftward.dashboard.fhir;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import java.util.List;
import java.util.Set;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.r4.model.Resource;

/**
 * HL7's own validator with the definitions of R4, its vital-signs profiles and its code systems, as
 * HAPI FHIR ships them.
 */
final class R4 {

  static final FhirContext CONTEXT = FhirContext.forR4Cached();
  private static final Set<ResultSeverityEnum> GRAVE =
      Set.of(ResultSeverityEnum.ERROR, ResultSeverityEnum.FATAL);
  private static final FhirValidator VALIDATOR = validator();

  private R4() {}

  private static FhirValidator validator() {
    var definitions =
        new ValidationSupportChain(
            new DefaultProfileValidationSupport(CONTEXT),
            new CommonCodeSystemsTerminologyService(CONTEXT),
            new InMemoryTerminologyServerValidationSupport(CONTEXT));
    return CONTEXT.newValidator().registerValidatorModule(new FhirInstanceValidator(definitions));
  }

  /** What the validator calls an error, after a way over the wire. */
  static List<String> errors(Resource resource) {
    return errors(CONTEXT.newJsonParser().encodeResourceToString(resource));
  }

  static List<String> errors(String json) {
    return VALIDATOR.validateWithResult(json).getMessages().stream()
        .filter(message -> GRAVE.contains(message.getSeverity()))
        .map(message -> message.getLocationString() + ": " + message.getMessage())
        .toList();
  }
}
