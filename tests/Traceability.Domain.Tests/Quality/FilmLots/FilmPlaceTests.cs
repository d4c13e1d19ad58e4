using Traceability.Domain.Quality.FilmLots;

namespace Traceability.Domain.Tests.Quality.FilmLots;

/// <summary>Where in the life of a film a verdict lies.</summary>
public class FilmPlaceTests
{
    [Theory]
    [InlineData("diaphragm", "ring-resonance", "bond-drift", "diaphragm")]
    [InlineData("capsule", "assembly", "capsule-gap", "capsule")]
    [InlineData("capsule", "soak", "climate-soak", "soak")]
    [InlineData("capsule", "insulation", "insulation-from-current", "insulation")]
    [InlineData("capsule", "response-front", "response-in-mask", "acoustic")]
    [InlineData("capsule", "acoustic-front", "entered-limits", "acoustic")]
    [InlineData("capsule", "acoustic-front", null, "acoustic")]
    [InlineData("diaphragm", "acoustic-front", null, "diaphragm")]
    [InlineData("unit", "insulation", "insulation-from-current", "final")]
    [InlineData("unit", "release", null, "final")]
    public void A_place_is_told_by_what_was_judged_and_how(string kind, string stage, string? method, string place) =>
        Assert.Equal(place, FilmPlace.Of(kind, stage, method));
}
