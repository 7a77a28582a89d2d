extension View {
    public func font(_ font: Font?) -> some View { ModifiedView() }
    public func foregroundStyle(_ color: Color) -> some View { ModifiedView() }
    public func background<Content: View>(_ content: Content) -> some View { ModifiedView() }
    public func background<Outline: Shape>(_ color: Color, in shape: Outline) -> some View { ModifiedView() }
    public func overlay<Content: View>(@ViewBuilder content: () -> Content) -> some View { ModifiedView() }
    public func contentShape<Outline: Shape>(_ shape: Outline) -> some View { ModifiedView() }
    public func clipped() -> some View { ModifiedView() }
    public func fixedSize() -> some View { ModifiedView() }
    public func id<ID: Hashable>(_ id: ID) -> some View { ModifiedView() }
    public func lineLimit(_ number: Int?) -> some View { ModifiedView() }
    public func multilineTextAlignment(_ alignment: TextAlignment) -> some View { ModifiedView() }
    public func allowsHitTesting(_ enabled: Bool) -> some View { ModifiedView() }
    public func submitLabel(_ label: SubmitLabel) -> some View { ModifiedView() }
    public func onSubmit(_ action: @escaping () -> Void) -> some View { ModifiedView() }
    public func border(_ color: Color, width: CGFloat = 1) -> some View { ModifiedView() }
    public func tint(_ color: Color?) -> some View { ModifiedView() }
    public func padding(_ length: CGFloat) -> some View { ModifiedView() }
    public func padding(_ edges: Edge.Set, _ length: CGFloat?) -> some View { ModifiedView() }
    public func frame(width: CGFloat? = nil, height: CGFloat? = nil, alignment: Alignment = .center) -> some View {
        ModifiedView()
    }
    public func frame(
        minWidth: CGFloat? = nil,
        idealWidth: CGFloat? = nil,
        maxWidth: CGFloat? = nil,
        minHeight: CGFloat? = nil,
        idealHeight: CGFloat? = nil,
        maxHeight: CGFloat? = nil,
        alignment: Alignment = .center
    ) -> some View { ModifiedView() }
    public func position(x: CGFloat = 0, y: CGFloat = 0) -> some View { ModifiedView() }
    public func scaledToFit() -> some View { ModifiedView() }
    public func ignoresSafeArea() -> some View { ModifiedView() }
    public func minimumScaleFactor(_ factor: CGFloat) -> some View { ModifiedView() }
    public func preferredColorScheme(_ scheme: ColorScheme?) -> some View { ModifiedView() }
    public func buttonStyle<Style: PrimitiveButtonStyle>(_ style: Style) -> some View { ModifiedView() }

    public func accessibilityLabel<S: StringProtocol>(_ label: S) -> some View { ModifiedView() }
    public func accessibilityValue<S: StringProtocol>(_ value: S) -> some View { ModifiedView() }
    public func accessibilityHidden(_ hidden: Bool) -> some View { ModifiedView() }
    public func accessibilityAddTraits(_ traits: AccessibilityTraits) -> some View { ModifiedView() }
    public func accessibilityElement(children: AccessibilityChildBehavior = .ignore) -> some View { ModifiedView() }
    public func accessibilityActions<Content: View>(@ViewBuilder _ content: () -> Content) -> some View {
        ModifiedView()
    }
    public func accessibilityAction(_ handler: @escaping () -> Void) -> some View { ModifiedView() }

    public func environment<V>(_ keyPath: WritableKeyPath<EnvironmentValues, V>, _ value: V) -> some View {
        ModifiedView()
    }
    public func task(@_inheritActorContext _ action: @escaping @Sendable () async -> Void) -> some View {
        ModifiedView()
    }
    public func task<T: Equatable>(
        id: T,
        @_inheritActorContext _ action: @escaping @Sendable () async -> Void
    ) -> some View { ModifiedView() }
    public func onChange<V: Equatable>(
        of value: V,
        initial: Bool = false,
        _ action: @escaping (V, V) -> Void
    ) -> some View { ModifiedView() }
    public func onTapGesture(perform action: @escaping (CGPoint) -> Void) -> some View { ModifiedView() }
    public func onLongPressGesture(minimumDuration: Double, perform action: @escaping () -> Void) -> some View {
        ModifiedView()
    }
}
